import { leaveOneOutD2, mahalanobis } from '../statistics/mahalanobis.ts';
import { project } from '../statistics/pca.ts';
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

/**
 * Leave-one-out distance of every member off a group's axes, measured from the others' mean: n/(n − 1) times the
 * distance from the mean of all.
 *
 * @example
 * leaveOneOutOff([[0, 0], [0, 2]], { mean: [0, 1], axes: [[1, 0]] }) // [2, 2]
 */
export function leaveOneOutOff(
  coordinates: readonly Row[],
  spread: Pick<FittedSpread, 'mean' | 'axes'>,
): number[] {
  const n = coordinates.length;
  return coordinates.map((row) => (n / (n - 1)) * distanceOff(row, spread));
}
