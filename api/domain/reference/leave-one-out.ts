import { leaveOneOutD2, mahalanobis } from '../statistics/mahalanobis.ts';
import { project } from '../statistics/pca.ts';
import { axesWithout, type References } from './refitted-axes.ts';
import { distanceOff, distanceSquared, type FittedSpread, spreadOnAxes } from './spread.ts';

type Row = readonly number[];

/** Fewest others that a shrunk covariance may be fitted to. */
const FEWEST_OTHERS = 4;

/**
 * Leave-one-out D² of every member of a group: its distance from the others' mean in the others' spread, on the same
 * axes (components are not refitted). Closed form for a sample covariance; refitted for shrinkage. Null when the
 * others are too few for a spread.
 *
 * @example
 * const rows = [[0, 0], [2, 0], [0, 2], [2, 2], [1, 1]];
 * const spread = fitSpread(rows, { method: 'sample', axes: [[1, 0], [0, 1]] });
 * leaveOneOut(rows, spread)[4] // 0
 * leaveOneOut(rows.slice(0, 3), spread) // null
 */
export function leaveOneOut(coordinates: readonly Row[], spread: FittedSpread): number[] | null {
  const { method, p, axes } = spread;
  const n = coordinates.length;
  if (method === 'sample' || method === 'components') {
    if (n - 2 < p) return null;
    return coordinates.map((row) => leaveOneOutD2(distanceSquared(row, spread), { n, p }));
  }
  if (n - 1 < FEWEST_OTHERS) return null;
  const rows = coordinates.map((row) => project(row, { means: spread.mean, loadings: axes }));
  return rows.map((row, i) => mahalanobis(row, spreadOnAxes(rows.toSpliced(i, 1), method)));
}

/** References up to which components are refitted without each; with more, one sherd hardly turns them. */
const REFITTED_UP_TO = 500;

/** A group's components, and all the references they were fitted to. */
export interface OnComponents extends Pick<FittedSpread, 'mean' | 'axes'> {
  readonly references: References;
}

/**
 * A member's distance off its group's components, as a newcomer meets it: components of all references but this
 * one, and the mean of the others of its group. Components fitted to a member follow it, so its distance off them
 * would be smaller than any newcomer's. With more than 500 references the components are kept as they are. Null
 * where the other references do not spread in so many directions.
 *
 * @example
 * const references = referencesOf({ eigenvalues: [2, 1], loadings: [[1, 0], [0, 1]] }, { n: 3, mean: [0, 0] });
 * const spread = { mean: [0, 0], axes: [[1, 0]], references };
 * offWithout([Math.sqrt(8 / 3), 0], spread, 3).axes // [[0, 1]]
 * offWithout([Math.sqrt(8 / 3), 0], spread, 3).distance // 2.449490
 */
export function offWithout(
  row: Row,
  { mean, axes, references }: OnComponents,
  n: number,
): { readonly distance: number; readonly mean: Row; readonly axes: readonly Row[] } | null {
  const others = mean.map((m, j) => (n * m - row[j]!) / (n - 1));
  const refitted = references.n > REFITTED_UP_TO ? axes : axesWithout(references, row, axes.length);
  if (!refitted) return null;
  return { distance: distanceOff(row, { mean: others, axes: refitted }), mean: others, axes: refitted };
}

/**
 * Leave-one-out distance of every member off a group's components (see `offWithout`); null where it cannot be had.
 *
 * @example
 * const references = referencesOf({ eigenvalues: [2, 1], loadings: [[1, 0], [0, 1]] }, { n: 600, mean: [0, 1] });
 * leaveOneOutOff([[0, 0], [0, 2]], { mean: [0, 1], axes: [[1, 0]], references }) // [2, 2]
 */
export function leaveOneOutOff(coordinates: readonly Row[], spread: OnComponents): number[] | null {
  const distances = coordinates.flatMap((row) => offWithout(row, spread, coordinates.length)?.distance ?? []);
  return distances.length === coordinates.length ? distances : null;
}
