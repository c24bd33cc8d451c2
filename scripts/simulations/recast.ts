/**
 * How often the recast test calls a glaze made with its own clay another clay, by number of spots: what `commonMean`
 * rests on. Seeded. Run: npx tsx scripts/simulations/recast.ts [rounds]. The answer is in docs/coverage.md.
 */
import { randomStream } from '../../api/domain/statistics/random.ts';
import { recastRounds } from './recast-rounds.ts';

const rounds = Number(process.argv[2] ?? 4000);
const WORLDS = {
  '3 % in every oxide': () => 0.03,
  '1.5 % (silica) to 8 % (magnesia)': (place: number) => 0.015 + 0.013 * place,
};
const percent = (count = 0) => `${((100 * count) / rounds).toFixed(1)} %`;
console.log('| scatter of a spot | spots | another clay | silica added or less | lead alone |');
for (const [name, relative] of Object.entries(WORLDS))
  for (const spots of [2, 3, 5, 10]) {
    const found = recastRounds({ spots, rounds, relative }, randomStream(20261125));
    const silica = (found['added silica'] ?? 0) + (found['less silica'] ?? 0);
    const cells = [
      name,
      spots,
      percent(found['another clay']),
      percent(silica),
      percent(found['lead alone']),
    ];
    console.log(`| ${cells.join(' | ')} |`);
  }
