import { RequirementError } from '../requirement.ts';
import { dot } from '../slip/weighted.ts';
import { randomStream } from '../statistics/random.ts';
import { distinctOrders, orderCount, shuffled } from './orders.ts';

/** Units that are exchangeable within their block, were the factor without effect. */
export interface BlockedUnits {
  readonly blocks: readonly (string | number)[];
  readonly x: readonly number[];
  readonly y: readonly number[];
}

export interface SlopeOptions {
  readonly level: number;
  readonly seed: number;
  /** More arrangements than this are sampled; 100,000 by default. */
  readonly most?: number;
}

export interface PermutationSlope {
  /** Change of y for one of x, by least squares within blocks. */
  readonly estimate: number;
  /** null: no slope is refused on that side. */
  readonly low: number | null;
  readonly high: number | null;
  /** Twice the smaller tail. */
  readonly p: number;
  readonly smallestP: number;
  readonly arrangements: number;
  readonly sampled: boolean;
}

/** Seeded draws where there are too many orders to list. */
export const PERMUTATION_DRAWS = 9999;
const SAME = 1e-9;

/**
 * The effect of x on y when the x of the units are put in another order within each block: p from all orders (or from
 * 9,999 seeded draws where there are more than `most`), and as limits all slopes d for which y − d·x does not look
 * unusual in that test. Each order refuses the slopes beyond (a − aₒ)/(b − bₒ), with a = Σxy and b = Σx² over centred
 * x, so the limits are order statistics of those and need no search (after Garthwaite 1996, doi 10.2307/2532852).
 * Throws where no block has two different x.
 *
 * @example
 * const paired = { blocks: [1, 1, 2, 2, 3, 3], x: [0, 1, 0, 1, 0, 1], y: [1, 2, 4, 6, 2, 5] }
 * permutationSlope(paired, { level: 0.5, seed: 1 }) // { estimate: 2, low: 1.5, high: 2.5, p: 0.25, arrangements: 8 }
 * permutationSlope({ ...paired, x: [1, 1, 1, 1, 1, 1] }, { level: 0.5, seed: 1 }) // throws two different settings in one block
 */
export function permutationSlope(units: BlockedUnits, options: SlopeOptions): PermutationSlope {
  const groups = grouped(units);
  if (groups.length === 0)
    throw new RequirementError('a permutation needs two different settings in one block; found none');
  const arrangements = groups.reduce((product, g) => product * orderCount(g.x), 1);
  const sampled = arrangements > (options.most ?? 100_000);
  const observed = sumOver(groups, (g) => ({ a: dot(g.x, g.y), b: dot(g.x, g.x) }));
  const others = sampled ? drawn(groups, options.seed) : everyOrder(groups);
  return { ...judge(observed, others, options.level), arrangements, sampled };
}

interface Group {
  /** Centred. */
  readonly x: readonly number[];
  readonly y: readonly number[];
}
/** Σxy and Σx·x(observed) of one order. */
interface Sums {
  readonly a: number;
  readonly b: number;
}

function grouped({ blocks, x, y }: BlockedUnits): Group[] {
  return [...new Set(blocks)]
    .map((block) => blocks.flatMap((b, i) => (b === block ? [i] : [])))
    .map((rows) => {
      const middle = rows.reduce((sum, i) => sum + x[i]!, 0) / rows.length;
      return { x: rows.map((i) => x[i]! - middle), y: rows.map((i) => y[i]!) };
    })
    .filter((g) => g.x.some((v) => Math.abs(v) > SAME * Math.max(...x.map(Math.abs))));
}

function sumOver(groups: readonly Group[], of: (group: Group) => Sums): Sums {
  return groups.map(of).reduce((s, t) => ({ a: s.a + t.a, b: s.b + t.b }), { a: 0, b: 0 });
}

/** Sums of every distinct order of every block together. */
function everyOrder(groups: readonly Group[]): Sums[] {
  return groups.reduce<Sums[]>(
    (sums, g) => {
      const own = distinctOrders(g.x).map((order) => ({ a: dot(order, g.y), b: dot(order, g.x) }));
      return sums.flatMap((s) => own.map((t) => ({ a: s.a + t.a, b: s.b + t.b })));
    },
    [{ a: 0, b: 0 }],
  );
}

/** Sums of seeded draws, the observed order among them. */
function drawn(groups: readonly Group[], seed: number): Sums[] {
  const { uniform } = randomStream(seed);
  const draw = (g: Group) => {
    const order = shuffled(g.x, uniform);
    return { a: dot(order, g.y), b: dot(order, g.x) };
  };
  const observed = sumOver(groups, (g) => ({ a: dot(g.x, g.y), b: dot(g.x, g.x) }));
  return [observed, ...Array.from({ length: PERMUTATION_DRAWS }, () => sumOver(groups, draw))];
}

function judge(observed: Sums, orders: readonly Sums[], level: number) {
  const { a, b } = observed;
  const n = orders.length;
  const moving = orders.filter((o) => b - o.b > SAME * b);
  const still = n - moving.length;
  const bounds = moving.map((o) => (a - o.a) / (b - o.b)).sort((s, t) => s - t);
  const size = Math.max(...orders.map((o) => Math.abs(o.a)), Math.abs(a));
  const tail = (side: 1 | -1) => orders.filter((o) => side * (o.a - a) >= -SAME * size).length / n;
  // The first bound at which more than (1 − level)/2 of the orders lie as far.
  const place = Math.floor(((1 - level) / 2) * n + SAME) - still;
  return {
    estimate: a / b,
    low: place >= 0 ? (bounds[place] ?? null) : null,
    high: place >= 0 ? (bounds.at(-1 - place) ?? null) : null,
    p: Math.min(1, 2 * Math.min(tail(1), tail(-1))),
    smallestP: Math.min(1, (2 * still) / n),
  };
}
