/**
 * How often `heldSlope` has p ≤ .05 and ≤ .025 for a level without effect when few levels are held beside few: the case
 * that sets the least number of comparisons for a verdict. Seeded. Run: npx tsx scripts/coverage/held-levels.ts [runs].
 */
import { randomStream } from '../../api/domain/statistics/random.ts';
import { heldSlope } from '../../api/domain/trials/held-slope.ts';

const runs = Number(process.argv[2] ?? 500);

/** Tiles of each level: the second against the first, the others held. */
const levels = (...counts: number[]) => {
  const level = counts.flatMap((n, k) => Array.from({ length: n }, () => k));
  const is = (k: number) => level.map((l) => (l === k ? 1 : 0));
  return {
    name: `${counts.length} levels of ${counts.join(' + ')} tiles`,
    x: is(1),
    others: counts.slice(2).map((_, i) => is(i + 2)),
  };
};
const DESIGNS = [
  levels(2, 2, 2),
  levels(3, 2, 2),
  levels(2, 2, 2, 2),
  levels(3, 3, 3),
  levels(2, 2, 2, 2, 2),
  { name: '2 × 2 levels on 6 tiles', x: [0, 0, 0, 1, 1, 1], others: [[0, 0, 1, 0, 1, 1]] },
  { name: '2 × 2 levels on 7 tiles', x: [0, 0, 0, 1, 1, 1, 1], others: [[0, 0, 1, 0, 0, 1, 1]] },
  { name: '2 × 2 levels on 8 tiles', x: [0, 0, 0, 0, 1, 1, 1, 1], others: [[0, 0, 1, 1, 0, 0, 1, 1]] },
];

const { normal } = randomStream(9);
console.log(`${runs} runs each.\n\n| Design | Comparisons left | p ≤ .05 | p ≤ .025 |\n|---|---|---|---|`);
for (const { name, x, others } of DESIGNS) {
  const found = Array.from({ length: runs }, (_, seed) => {
    const units = { blocks: x.map(() => 1), x, y: x.map(() => normal()) };
    return heldSlope(units, others, { level: 0.95, seed, most: 6000 });
  });
  const share = (limit: number) =>
    `${((100 * found.filter((f) => f.p <= limit).length) / runs).toFixed(1)} %`;
  console.log(`| ${name} | ${found[0]!.comparisons} | ${share(0.05)} | ${share(0.025)} |`);
}
