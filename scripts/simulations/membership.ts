/**
 * How often the placement calls a true member, and a stranger, inside or outside, by group size and method: what the
 * default of choose-spread.ts and the levels of verdict.ts rest on. Seeded.
 * Run: npx tsx scripts/simulations/membership.ts [rounds] [oxides] [heavy]
 * One and two groups, ranks, and values below detection: scripts/coverage/placement.ts, docs/coverage-placement.md.
 *
 * Three groups of the same spread (mixing weights falling by √½ a direction, turned at random, so that the condition
 * of the covariance is that of the 45 Romano-British sherds) around centres of their own. A newcomer is a true
 * member; `another laboratory` is the same with 5 % of systematic difference on every oxide; the strangers have one
 * oxide multiplied. `heavy` draws members from a t distribution on 4 degrees of freedom instead of a normal.
 *
 * Found with 400 rounds and 9 oxides (p = 8): sample covariance and components refuse .04–.07 of true newcomers at
 * p < .05 (.08–.15 when heavy-tailed), but power against one oxide at double grows with every direction kept: at n = 14
 * p < .05 for .94 with all 8 directions (6 degrees of freedom) and .36 with 4 components. Shrinkage blunts the narrow
 * directions: .31 beyond all members at n = 14, .48 at n = 26. Another laboratory's 5 % puts .34–.49 of true members
 * below .05 in groups of 14 to 40: a difference between laboratories is a difference.
 */
import { clrInverse } from '../../api/domain/composition/log-ratio.ts';
import type { Sample } from '../../api/domain/composition/types.ts';
import { placeSample } from '../../api/domain/placement/place.ts';
import type { GroupPlacement } from '../../api/domain/placement/types.ts';
import { fitReference } from '../../api/domain/reference/fit.ts';
import type { CovarianceChoice } from '../../api/domain/reference/types.ts';
import { type RandomStream, randomStream } from '../../api/domain/statistics/random.ts';

const rounds = Number(process.argv[2] ?? 400);
const D = Number(process.argv[3] ?? 9);
const heavy = process.argv[4] === 'heavy';
const OXIDES = Array.from({ length: D }, (_, j) => `Oxide${j}`);
const GROUPS = ['a', 'b', 'c'];

function sample(id: string, group: string | null, clr: readonly number[]): Sample {
  const parts = clrInverse(clr);
  const amount = (value: number) => ({ value, limit: null, sigma: null, sigmaBasis: null, resolution: null });
  const amounts = Object.fromEntries(OXIDES.map((oxide, j) => [oxide, amount(parts[j]!)]));
  const role = group ? 'reference' : 'replica';
  return { id, label: id, group, role, measured: 'paint', spots: 1, rawTotal: 100, amounts };
}

function tailWeight({ normal }: RandomStream): number {
  if (!heavy) return 1;
  const chiSquare = [1, 2, 3, 4].reduce((sum) => sum + normal() ** 2, 0);
  return Math.sqrt(4 / chiSquare) / Math.SQRT2;
}

/** Draws the coordinates of members: a centre for each group, one spread for all. */
function population(stream: RandomStream) {
  const { normal } = stream;
  const mix = OXIDES.map((_, k) => OXIDES.map(() => 0.25 * Math.SQRT1_2 ** k * normal()));
  const centres = GROUPS.map(() => OXIDES.map(() => 0.6 * normal()));
  return (group: number) => {
    const own = mix.map(() => normal());
    const weight = tailWeight(stream);
    return centres[group]!.map((c, j) => c + weight * mix.reduce((s, row, k) => s + row[j]! * own[k]!, 0));
  };
}

function casesFrom(newcomer: readonly number[], { uniform, normal }: RandomStream) {
  const oxide = Math.floor(uniform() * D);
  const times = (factor: number) => newcomer.map((v, j) => v + (j === oxide ? Math.log(factor) : 0));
  return {
    newcomer,
    'another laboratory': newcomer.map((v) => v + 0.05 * normal()),
    'one oxide × 1.5': times(1.5),
    'one oxide × 2': times(2),
    'one oxide × 3': times(3),
  };
}

/** Whether the test on D² alone says no: p < .05, or beyond all members where there is no p. */
const refused = (g: GroupPlacement) =>
  g.membership === null ? g.typicality?.atLeastAsFar === 0 : g.membership < 0.05;

interface Tally {
  refused: number;
  notInside: number;
  outside: number;
}

function simulate(n: number, covariance: CovarianceChoice) {
  const parent = randomStream(20260101 + n);
  const tallies = new Map<string, Tally>();
  let method = '';
  for (let round = 0; round < rounds; round++) {
    const stream = parent.split();
    const draw = population(stream);
    const references = GROUPS.flatMap((group, g) =>
      Array.from({ length: n }, (_, i) => sample(`${group}${i}`, group, draw(g))),
    );
    const replacement = { fraction: 0.65, limits: {} };
    const settings = { groups: GROUPS, parts: null, scale: 'log-ratio' as const, covariance, replacement };
    const model = fitReference(references, settings, {});
    for (const [name, clr] of Object.entries(casesFrom(draw(0), stream))) {
      const placed = placeSample(model, sample('new', null, clr)).groups.find((g) => g.group === 'a')!;
      method = placed.method;
      const t = tallies.get(name) ?? { refused: 0, notInside: 0, outside: 0 };
      t.refused += refused(placed) ? 1 : 0;
      t.notInside += placed.verdict === 'inside' ? 0 : 1;
      t.outside += placed.verdict === 'outside' ? 1 : 0;
      tallies.set(name, t);
    }
  }
  return { method, tallies };
}

const METHODS: readonly CovarianceChoice[] = [
  { kind: 'auto' },
  { kind: 'sample' },
  { kind: 'components', count: 2 },
  { kind: 'components', count: 4 },
  { kind: 'shrinkage', target: 'oas' },
  { kind: 'shrinkage', target: 'ledoit-wolf' },
];
for (const n of [6, 8, 10, 12, 14, 16, 20, 26, 40])
  for (const choice of METHODS) {
    const { method, tallies } = simulate(n, choice);
    if (method === 'refused') continue;
    console.log(`n = ${n}, ${choice.kind}: ${method}`);
    for (const [name, t] of tallies) {
      const share = (count: number) => (count / rounds).toFixed(2);
      console.log(
        `  ${name.padEnd(20)} refused by D² ${share(t.refused)}  not inside ${share(t.notInside)}  outside ${share(t.outside)}`,
      );
    }
  }
