/**
 * How often the band of the chance curve holds the mean chance over tiles, and how wide it is, for few tiles and steep
 * curves. Seeded. Run: npx tsx scripts/coverage/chance.ts [runs]; prints the table of docs/coverage-trials.md.
 */
import { randomStream } from '../../api/domain/statistics/random.ts';
import { predictChance } from '../../api/domain/trials/chance.ts';
import { logistic } from '../../api/domain/trials/logistic-model.ts';
import type { ChancePoint, Factor } from '../../api/domain/trials/types.ts';
import { fireTrial } from './trial-world.ts';

const runs = Number(process.argv[2] ?? 500);
const COATS: Factor = { name: 'coats', kind: 'number', unit: 'coat', step: 1 };
const AT = [1, 2, 3, 4, 5, 6];
/** A band as wide as this tells next to nothing. */
const TOO_WIDE = 0.8;

interface World {
  readonly tiles: number;
  readonly thickness: number;
  readonly tileSpread: number;
}

function curveOf(world: World, seed: number): readonly ChancePoint[] {
  const fire = { ...world, zonesPerTile: 6, brush: 0, roast: 0, coats: 'whole', grades: 'two' } as const;
  const zones = fireTrial(fire, randomStream(seed));
  const request = { factors: [COATS], outcome: 'glossy', seed: 1 } as const;
  return predictChance(zones, { ...request, against: 'coats', points: AT.length }).points;
}

/** The mean chance over tiles at a push, by averaging over the tiles' spread. */
function meanChance(push: number, spread: number): number {
  const steps = Array.from({ length: 2001 }, (_, i) => -5 + i / 200);
  const weights = steps.map((z) => Math.exp((-z * z) / 2));
  const whole = weights.reduce((a, b) => a + b, 0);
  return steps.reduce((sum, z, i) => sum + (weights[i]! / whole) * logistic(push + spread * z), 0);
}

const middle = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1]!;
const percent = (share: number, digits = 1) => `${(100 * share).toFixed(digits)} %`;

function row(world: World, first: number): string {
  const curves = Array.from({ length: runs }, (_, run) => curveOf(world, first + run));
  const at = (k: number) => curves.map((points) => points[k]!);
  const truths = AT.map((coats) => meanChance(world.thickness * (coats - 3.5), world.tileSpread));
  const held = AT.map(
    (_, k) => at(k).filter((p) => p.low <= truths[k]! && truths[k]! <= p.high).length / runs,
  );
  const widths = AT.map((_, k) => at(k).map((p) => p.high - p.low));
  const wide = widths.map((own) => own.filter((w) => w > TOO_WIDE).length / runs);
  const ends = (of: readonly number[]) => (of[0]! + of[5]!) / 2;
  const centre = (of: readonly number[]) => (of[2]! + of[3]!) / 2;
  const typical = widths.map(middle);
  return `| ${[
    world.tiles,
    world.thickness.toFixed(1),
    world.tileSpread.toFixed(1),
    percent(ends(held)),
    percent(centre(held)),
    percent(Math.min(...held)),
    percent(ends(typical), 0),
    percent(centre(typical), 0),
    percent(ends(wide), 0),
  ].join(' | ')} |`;
}

console.log(`${runs} runs each.\n`);
console.log(
  '| Tiles | Effect per coat | Tiles’ spread | Holds it at 1 and 6 coats | at 3 and 4 | where least | Width at 1 and 6 | at 3 and 4 | Wider than 80 points at 1 and 6 |',
);
console.log('|---|---|---|---|---|---|---|---|---|');
let first = 40_000_000;
for (const tiles of [4, 5, 6, 8])
  for (const [thickness, tileSpread] of [
    [0.4, 0.5],
    [0.4, 2],
    [0.8, 1],
    [1.5, 1],
    [3, 1],
    [3, 0.2],
  ] as const) {
    console.log(row({ tiles, thickness, tileSpread }, first));
    first += 1_000_000;
  }
