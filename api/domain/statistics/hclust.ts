import { RequirementError } from '../requirement.ts';

export type Linkage = 'ward' | 'average';

/** Two clusters joined: an item by its index from 0, an earlier join k of n items as n + k. */
export interface Join {
  readonly pair: readonly [number, number];
  readonly height: number;
}
export interface Clustering {
  /** n − 1 joins, lowest first. */
  readonly joins: readonly Join[];
  /** Items from first to last, so that no two branches cross. */
  readonly order: readonly number[];
}

/** More would need a matrix of distances larger than a page can hold. */
const MOST_ITEMS = 2_000;

/**
 * Euclidean distances between all rows, n × n, row by row. Throws with fewer than 2 rows, or more than 2000.
 *
 * @example
 * distanceMatrix([[0, 0], [3, 4]]) // [0, 5, 5, 0]
 * distanceMatrix([[1]]) // throws distances need at least 2 rows
 */
export function distanceMatrix(rows: readonly (readonly number[])[]): Float64Array {
  const n = rows.length;
  if (n < 2) throw new RequirementError(`distances need at least 2 rows; found ${n}`);
  if (n > MOST_ITEMS)
    throw new RequirementError(`distances are taken between at most ${MOST_ITEMS} rows; found ${n}`);
  const distances = new Float64Array(n * n);
  for (let i = 1; i < n; i++)
    for (let j = 0; j < i; j++) {
      const distance = Math.hypot(...rows[i]!.map((x, k) => x - rows[j]![k]!));
      distances[i * n + j] = distance;
      distances[j * n + i] = distance;
    }
  return distances;
}

/**
 * Agglomerative clustering of n items from their n × n distances, by Ward's criterion (heights as R's ward.D2, on
 * distances that are not squared) or by average linkage, along chains of nearest neighbours. Murtagh and Legendre
 * 2014, doi 10.1007/s00357-014-9161-z; Müllner 2011, arXiv 1109.2378 (both from memory). Throws when the distances
 * are not those of at least 2 items.
 *
 * @example
 * hierarchicalClustering([0, 1, 4, 1, 0, 3, 4, 3, 0], 'average').joins // [{ pair: [0, 1], height: 1 }, { pair: [2, 3], height: 3.5 }]
 * hierarchicalClustering([0], 'ward') // throws clustering needs the n × n distances of at least 2 items
 */
export function hierarchicalClustering(distances: ArrayLike<number>, linkage: Linkage): Clustering {
  const n = Math.sqrt(distances.length);
  if (!Number.isInteger(n) || n < 2)
    throw new RequirementError(
      `clustering needs the n × n distances of at least 2 items; found ${distances.length} numbers`,
    );
  const joins = renumbered(chainJoins(Float64Array.from(distances), n, linkage), n);
  return { joins, order: orderOf(joins, n) };
}

interface Found {
  readonly one: number;
  readonly other: number;
  readonly height: number;
}

/** Joins as they are found along chains; a cluster goes by the index of one item in it. */
function chainJoins(d: Float64Array, n: number, linkage: Linkage): Found[] {
  const sizes = new Float64Array(n).fill(1);
  const tops = new Float64Array(n);
  const found: Found[] = [];
  let chain: number[] = [];
  while (found.length < n - 1) {
    if (chain.length === 0) chain = [sizes.findIndex((size) => size > 0)];
    const tip = chain.at(-1)!;
    const before = chain.at(-2) ?? -1;
    const next = nearestTo(tip, before, { d, n, sizes });
    if (next !== before) {
      chain.push(next);
      continue;
    }
    chain.splice(-2);
    const [one, other] = [Math.min(tip, next), Math.max(tip, next)];
    // Rounding may put a join a hair below those it is made of; no tree can be drawn of that.
    const height = Math.max(d[one * n + other]!, tops[one]!, tops[other]!);
    tops[one] = height;
    found.push({ one, other, height });
    merge(one, other, { d, n, sizes, linkage });
  }
  return found;
}

interface State {
  readonly d: Float64Array;
  readonly n: number;
  /** Items in each cluster; 0 where it has been taken up by another. */
  readonly sizes: Float64Array;
}

/** The nearest other cluster; of several as near, the one the chain came from. */
function nearestTo(tip: number, before: number, { d, n, sizes }: State): number {
  let nearest = before;
  let least = before < 0 ? Number.POSITIVE_INFINITY : d[tip * n + before]!;
  for (let k = 0; k < n; k++)
    if (k !== tip && sizes[k]! > 0 && d[tip * n + k]! < least) {
      least = d[tip * n + k]!;
      nearest = k;
    }
  return nearest;
}

/** Joins the second cluster to the first, and gives it its distances (Lance and Williams). */
function merge(one: number, other: number, at: State & { readonly linkage: Linkage }): void {
  const { d, n, sizes, linkage } = at;
  const [a, b] = [sizes[one]!, sizes[other]!];
  const between = d[one * n + other]!;
  for (let k = 0; k < n; k++) {
    const c = sizes[k]!;
    if (k === one || k === other || c === 0) continue;
    const [toOne, toOther] = [d[k * n + one]!, d[k * n + other]!];
    const distance =
      linkage === 'average'
        ? (a * toOne + b * toOther) / (a + b)
        : Math.sqrt(((a + c) * toOne ** 2 + (b + c) * toOther ** 2 - c * between ** 2) / (a + b + c));
    d[k * n + one] = distance;
    d[one * n + k] = distance;
  }
  sizes[one] = a + b;
  sizes[other] = 0;
}

/** Lowest join first, clusters by number. In a pair an item comes before a cluster, and the lower number first. */
function renumbered(found: readonly Found[], n: number): Join[] {
  const cluster = Array.from({ length: n }, (_, item) => item);
  const rank = (one: number) => (one < n ? one - n : one);
  return [...found]
    .sort((one, other) => one.height - other.height)
    .map(({ one, other, height }, k) => {
      const pair = [cluster[one]!, cluster[other]!].sort((x, y) => rank(x) - rank(y)) as [number, number];
      cluster[one] = n + k;
      return { pair, height };
    });
}

function orderOf(joins: readonly Join[], n: number): number[] {
  const order: number[] = [];
  const waiting = [n + joins.length - 1];
  while (waiting.length > 0) {
    const one = waiting.pop()!;
    if (one < n) order.push(one);
    else waiting.push(joins[one - n]!.pair[1], joins[one - n]!.pair[0]);
  }
  return order;
}
