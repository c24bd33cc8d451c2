import { RequirementError } from '../requirement.ts';
import { bisect } from '../slip/minimise.ts';
import { dot } from '../slip/weighted.ts';
import { blockOrders } from './block-orders.ts';
import { centreWithin, directionsOf, takeOut } from './columns.ts';
import {
  type BlockedUnits,
  PERMUTATION_DRAWS,
  type PermutationSlope,
  type SlopeOptions,
} from './permutation-slope.ts';

export interface HeldSlope extends PermutationSlope {
  /** In how many independent ways units of one block still differ once the held factors are taken out. */
  readonly comparisons: number;
}

/** More orders than this are sampled: each is gone through again for every slope that is tried. */
const MOST = 50_000;
const SAME = 1e-9;
/** Doublings of the first slope that is tried for a limit. */
const DOUBLINGS = 60;

/**
 * The effect of x on y with other columns held: what they leave of y within blocks is permuted within blocks, they are
 * fitted anew to each order, and the partial correlations (which order as partial t does) are compared (Freedman &
 * Lane 1983, doi 10.1080/07350015.1983.10509354; Anderson & Robinson 2001, doi 10.1111/1467-842X.00156). Approximate:
 * what is left over is not wholly exchangeable. Limits: the slopes d for which y − d·x is not refused, by halving.
 * Throws where x follows from the others within blocks.
 *
 * @example
 * const units = { blocks: [1, 1, 1, 1, 1], x: [0, 1, 2, 3, 4], y: [1, 3, 2, 5, 4] }
 * heldSlope(units, [[1, 0, 0, 0, 1]], { level: 0.5, seed: 1 }) // { estimate: 0.8, arrangements: 120, sampled: false, comparisons: 3 }
 * heldSlope(units, [[0, 2, 4, 6, 8]], { level: 0.5, seed: 1 }) // throws something left of a factor once the others are held
 */
export function heldSlope(
  { blocks, x, y }: BlockedUnits,
  others: readonly (readonly number[])[],
  { level, seed, most = MOST }: SlopeOptions,
): HeldSlope {
  const within = blocks.map(String);
  const columns = others.map((o) => centreWithin(o, within));
  const rest = (v: readonly number[]) => takeOut(centreWithin(v, within), columns);
  const own = rest(x);
  if (own.share === 0)
    throw new RequirementError(
      'a permutation needs something left of a factor once the others are held; found nothing',
    );
  const held = directionsOf(columns);
  const { orders, arrangements, sampled } = blockOrders(within, { most, draws: PERMUTATION_DRAWS, seed });
  const sums = sumsOf(orders, { x: own.left, y: rest(y).left, held });
  const comparisons = blocks.length - new Set(within).size - held.length;
  return { ...judge(sums, level), arrangements, sampled, comparisons };
}

/** Of each order: products of x with permuted y and x, and of these with each other less what the held explain. */
interface Sums {
  readonly xy: Float64Array;
  readonly xx: Float64Array;
  readonly leftYY: Float64Array;
  readonly leftXY: Float64Array;
  readonly leftXX: Float64Array;
  /** The same of the order observed. */
  readonly own: { readonly xy: number; readonly xx: number; readonly yy: number };
}

function sumsOf(
  orders: readonly (readonly number[])[],
  { x, y, held }: { x: readonly number[]; y: readonly number[]; held: readonly (readonly number[])[] },
): Sums {
  const own = { xy: dot(x, y), xx: dot(x, x), yy: dot(y, y) };
  const column = () => new Float64Array(orders.length);
  const sums = { xy: column(), xx: column(), leftYY: column(), leftXY: column(), leftXX: column(), own };
  orders.forEach((order, k) => {
    const [px, py] = [order.map((i) => x[i]!), order.map((i) => y[i]!)];
    const [alongX, alongY] = [held.map((h) => dot(h, px)), held.map((h) => dot(h, py))];
    sums.xy[k] = dot(x, py);
    sums.xx[k] = dot(x, px);
    sums.leftYY[k] = own.yy - dot(alongY, alongY);
    sums.leftXY[k] = own.xy - dot(alongX, alongY);
    sums.leftXX[k] = own.xx - dot(alongX, alongX);
  });
  return sums;
}

/** Share of the orders in which y − slope·x goes with x at least as far to one side. */
function tail({ xy, xx, leftYY, leftXY, leftXX, own }: Sums, slope: number, side: 1 | -1): number {
  const size = own.yy - 2 * slope * own.xy + slope * slope * own.xx;
  // Nothing is left of y: every order is as good.
  if (size <= SAME * SAME * (own.yy + slope * slope * own.xx)) return 1;
  const correlation = (product: number, left: number) =>
    left <= SAME * size ? 0 : (side * product) / Math.sqrt(left * own.xx);
  const observed = correlation(own.xy - slope * own.xx, size);
  let count = 0;
  for (let k = 0; k < xy.length; k++) {
    const left = leftYY[k]! - 2 * slope * leftXY[k]! + slope * slope * leftXX[k]!;
    if (correlation(xy[k]! - slope * xx[k]!, left) >= observed - SAME) count++;
  }
  return count / xy.length;
}

function judge(sums: Sums, level: number) {
  const { own, xx, leftXX } = sums;
  const alpha = (1 - level) / 2 + SAME;
  const estimate = own.xy / own.xx;
  // Orders that leave x as it is, up to what is held: no outcome can be rarer than they are.
  const still = xx.filter((b, k) => b >= (1 - SAME) * Math.sqrt(leftXX[k]! * own.xx) && b > 0).length;
  const first = Math.sqrt(own.yy / own.xx) || 1;
  const limit = (side: 1 | -1): number | null => {
    const refused = (away: number) => tail(sums, estimate - side * away, side) <= alpha;
    const far = Array.from({ length: DOUBLINGS }, (_, i) => first * 2 ** i).find(refused);
    return far === undefined ? null : estimate - side * bisect(refused, 0, far);
  };
  const bounded = still / xx.length <= alpha;
  return {
    estimate,
    low: bounded ? limit(1) : null,
    high: bounded ? limit(-1) : null,
    p: Math.min(1, 2 * Math.min(tail(sums, 0, 1), tail(sums, 0, -1))),
    smallestP: Math.min(1, (2 * still) / xx.length),
  };
}
