/**
 * Measures what the placement promises: npx tsx scripts/coverage/placement.ts [rounds] writes the tables in
 * docs/coverage-placement.md between its marks. Seeded; about ten minutes for 1,000 rounds on a busy machine.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { placeSample } from '../../api/domain/placement/place.ts';
import { fitReference } from '../../api/domain/reference/fit.ts';
import { randomStream } from '../../api/domain/statistics/random.ts';
import { drawPlacements, finishDraws } from '../../api/domain/uncertainty/draw-placements.ts';
import { DEFAULT_UNCERTAINTY } from '../../api/domain/uncertainty/types.ts';
import { OXIDES, population, sampleFrom, settingsOf } from './placement-world.ts';

const rounds = Number(process.argv[2] ?? 1000);
const file = path.resolve(import.meta.dirname, '../../docs/coverage-placement.md');
const percent = (count: number, of: number) => `${((100 * count) / of).toFixed(1)} %`;

/** True newcomers, and the same with one oxide doubled, against a group of n sherds among so many groups. */
function called(groups: number, n: number): string {
  const stream = randomStream(1000 * groups + n);
  const names = Array.from({ length: groups }, (_, g) => `g${g}`);
  const seen = { below05: 0, notInside: 0, outside: 0, first: 0, doubled: 0, doubledOutside: 0 };
  let method = '';
  for (let round = 0; round < rounds; round++) {
    const draw = population(stream, groups);
    const references = names.flatMap((name, g) =>
      Array.from({ length: n }, (_, i) => sampleFrom(`${name} ${i}`, name, { clr: draw(g), trace: null })),
    );
    const clr = draw(0);
    const oxide = Math.floor(stream.uniform() * OXIDES.length);
    const doubled = clr.map((v, j) => v + (j === oxide ? Math.LN2 : 0));
    const model = fitReference(references, settingsOf(names), {});
    const [own, other] = [clr, doubled].map(
      (at) =>
        placeSample(model, sampleFrom('new', null, { clr: at, trace: null })).groups.find(
          (g) => g.group === 'g0',
        )!,
    );
    method = own!.method;
    if (own!.membership !== null && own!.membership < 0.05) seen.below05++;
    if (own!.verdict !== 'inside') seen.notInside++;
    if (own!.verdict === 'outside') seen.outside++;
    if (own!.typicality?.atLeastAsFar === 0) seen.first++;
    if (other!.verdict !== 'inside') seen.doubled++;
    if (other!.verdict === 'outside') seen.doubledOutside++;
  }
  const p = /OAS/.test(method) ? '–' : percent(seen.below05, rounds);
  const shares = [seen.notInside, seen.outside].map((count) => percent(count, rounds));
  const rank = `${percent(seen.first, rounds)} (${percent(1, n + 1)})`;
  const power = [seen.doubled, seen.doubledOutside].map((count) => percent(count, rounds));
  return `| ${[groups, n, method, p, ...shares, rank, ...power].join(' | ')} |`;
}

/** True newcomers with a trace oxide around the detection limit, 2 % errors stated, drawn 400 times each. */
function drawnBelow(n: number, centre: number): string {
  const times = Math.max(20, Math.round(rounds / 10));
  const stream = randomStream(77 + n + Math.round(1000 * centre));
  const seen = { below: 0, most: 0, outside: 0, single: 0 };
  for (let round = 0; round < times; round++) {
    const draw = population(stream, 2);
    const trace = (g: number) => (g === 0 ? centre : 1.5) * Math.exp(0.3 * stream.normal());
    const make = (id: string, group: string | null, g: number) =>
      sampleFrom(id, group, { clr: draw(g), trace: trace(g) });
    const references = [0, 1].flatMap((g) =>
      Array.from({ length: n }, (_, i) => make(`g${g} ${i}`, `g${g}`, g)),
    );
    const sample = make('new', null, 0);
    const model = fitReference(references, settingsOf(['g0', 'g1']), {});
    seen.below += model.replaced.filter((r) => r.sample.startsWith('g0')).length / n;
    const settings = { ...DEFAULT_UNCERTAINTY, draws: 400, assumedRelative: 0.02 };
    const drawn = finishDraws(drawPlacements(model, { sample, slip: null, settings })).groups[0]!;
    if (placeSample(model, sample).groups.find((g) => g.group === 'g0')!.verdict !== 'inside') seen.single++;
    if (drawn.inside! < 0.5) seen.most++;
    if (drawn.outside! >= 0.95) seen.outside++;
  }
  return `| ${[n, `${centre} wt%`, percent(seen.below, times), percent(seen.single, times), percent(seen.most, times), percent(seen.outside, times)].join(' | ')} |`;
}

const head = (columns: readonly string[]) => [
  `| ${columns.join(' | ')} |`,
  `|${' --- |'.repeat(columns.length)}`,
];
const print = (line: string) => {
  console.log(line);
  return line;
};
const calls = [
  ...head([
    'groups',
    'n',
    'method',
    'p < .05',
    'not inside',
    'outside',
    'further out than all (wanted)',
    'one oxide doubled: not inside',
    'outside',
  ]),
  ...[1, 2, 3].flatMap((groups) => [4, 5, 7, 8, 10, 12, 13, 14, 20, 40].map((n) => print(called(groups, n)))),
];
const below = [
  ...head([
    'n',
    'middle of the trace oxide',
    'references below detection',
    'not inside by one placement',
    'inside in fewer than half the draws',
    'outside in 95 % of draws',
  ]),
  ...[10, 16, 30].flatMap((n) => [0.02, 0.05, 0.08].map((centre) => print(drawnBelow(n, centre)))),
];
let text = readFileSync(file, 'utf8');
for (const [mark, lines] of Object.entries({ calls, below })) {
  const [open, close] = [`<!-- ${mark} -->`, `<!-- /${mark} -->`];
  const before = text.slice(0, text.indexOf(open) + open.length);
  text = `${before}\n${lines.join('\n')}\n${text.slice(text.indexOf(close))}`;
}
writeFileSync(file, text);
