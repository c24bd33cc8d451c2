import { RequirementError } from '../requirement.ts';
import { cholesky, invertTriangle } from '../statistics/cholesky.ts';
import { mahalanobis, mahalanobisGradient, sampleSpread } from '../statistics/mahalanobis.ts';
import { columnMeans, type Rows } from '../statistics/moments.ts';
import { project } from '../statistics/pca.ts';
import { ledoitWolf, oas } from '../statistics/shrinkage.ts';
import type { GroupSpread } from './types.ts';

type Row = readonly number[];

/** A group's centre and spread, enough to measure how far out a sample lies. */
export interface FittedSpread extends Pick<GroupSpread, 'method' | 'p' | 'axes' | 'inverseCholesky'> {
  /** In the working scale, one per part. */
  readonly mean: Row;
  readonly covariance: readonly Row[];
  readonly shrinkage: number | null;
}

/** Which spread to fit, and on which axes (orthonormal rows). */
export interface SpreadSettings {
  readonly method: GroupSpread['method'];
  readonly axes: readonly Row[];
}

/** A deviation below this share of the coordinates is the rounding of sherds that are all the same. */
const SAME_SHARE = 1e-12;

function needDifference(coordinates: readonly Row[], mean: Row): void {
  const size = Math.hypot(...mean);
  if (!coordinates.some((row) => Math.hypot(...row.map((v, j) => v - mean[j]!)) > SAME_SHARE * size))
    throw new RequirementError(`a spread needs sherds that differ; these ${coordinates.length} are the same`);
}

/**
 * Mean, covariance and packed inverse of its factor, of rows already on a group's axes, by a method.
 *
 * @example
 * spreadOnAxes([[0, 0], [2, 0], [0, 2], [2, 2]], 'oas').shrinkage // 1
 */
export function spreadOnAxes(rows: Rows, method: GroupSpread['method']) {
  if (method === 'sample' || method === 'components') return { ...sampleSpread(rows), shrinkage: null };
  const shrunk = method === 'oas' ? oas(rows) : ledoitWolf(rows);
  return { ...shrunk, inverseCholesky: invertTriangle(cholesky(shrunk.covariance)) };
}

/**
 * Fits a group's spread to its rows of coordinates (working scale, one number per part) on given axes. Throws when
 * the rows are too few or do not spread in every direction.
 *
 * @example
 * const rows = [[0, 0], [2, 0], [0, 2], [2, 2]];
 * fitSpread(rows, { method: 'sample', axes: [[1, 0], [0, 1]] }).covariance // [[1.333333, 0], [0, 1.333333]]
 * fitSpread(rows, { method: 'oas', axes: [[1, 0], [0, 1]] }).shrinkage // 1
 */
export function fitSpread(coordinates: readonly Row[], { method, axes }: SpreadSettings): FittedSpread {
  const mean = columnMeans(coordinates);
  needDifference(coordinates, mean);
  const rows = coordinates.map((row) => project(row, { means: mean, loadings: axes }));
  const { covariance, inverseCholesky, shrinkage } = spreadOnAxes(rows, method);
  return {
    method,
    p: axes.length,
    axes,
    mean,
    covariance,
    inverseCholesky: Array.from(inverseCholesky),
    shrinkage,
  };
}

const atOrigin = ({ p, inverseCholesky }: Pick<FittedSpread, 'p' | 'inverseCholesky'>) => ({
  mean: new Float64Array(p),
  inverseCholesky,
});

/**
 * D² of coordinates from a group, in its own spread.
 *
 * @example
 * const spread = fitSpread([[0, 0], [2, 0], [0, 2], [2, 2]], { method: 'sample', axes: [[1, 0], [0, 1]] });
 * distanceSquared([3, 1], spread) // 3
 */
export function distanceSquared(
  coordinates: Row,
  spread: Pick<FittedSpread, 'p' | 'axes' | 'inverseCholesky' | 'mean'>,
): number {
  const u = project(coordinates, { means: spread.mean, loadings: spread.axes });
  return mahalanobis(u, atOrigin(spread));
}

/**
 * D² shared out among the parts: (x − mean)_j times the gradient on part j. The shares sum to D²; one is negative
 * where a part lies out on the side its correlation with the others makes likely.
 *
 * @example
 * const spread = fitSpread([[0, 0], [2, 0], [0, 2], [2, 2]], { method: 'sample', axes: [[1, 0], [0, 1]] });
 * sharesOfD2([3, 1], spread) // [3, 0]
 */
export function sharesOfD2(
  coordinates: Row,
  spread: Pick<FittedSpread, 'p' | 'axes' | 'inverseCholesky' | 'mean'>,
): number[] {
  const u = project(coordinates, { means: spread.mean, loadings: spread.axes });
  const gradient = mahalanobisGradient(u, atOrigin(spread));
  return coordinates.map((v, j) => {
    const slope = gradient.reduce((sum, g, k) => sum + g * spread.axes[k]![j]!, 0);
    return (v - spread.mean[j]!) * slope;
  });
}

/**
 * Distance of coordinates from a group's centre in the directions its axes leave out: what D² in a few
 * components cannot see.
 *
 * @example
 * distanceOff([3, 4], { mean: [0, 0], axes: [[1, 0]] }) // 4
 */
export function distanceOff(coordinates: Row, { mean, axes }: Pick<FittedSpread, 'mean' | 'axes'>): number {
  const u = project(coordinates, { means: mean, loadings: axes });
  const rest = coordinates.map(
    (v, j) => v - mean[j]! - u.reduce((sum, score, k) => sum + score * axes[k]![j]!, 0),
  );
  return Math.hypot(...rest);
}

/**
 * The value of a fit, or the requirement that was not met.
 *
 * @example
 * orRefusal(() => fitSpread([[0, 0], [1, 1]], { method: 'sample', axes: [[1, 0], [0, 1]] })).refusal // 'a sample covariance needs n − 1 ≥ p; found n = 2, p = 2'
 */
export function orRefusal<T>(
  attempt: () => T,
): { value: T; refusal: null } | { value: null; refusal: string } {
  try {
    return { value: attempt(), refusal: null };
  } catch (error) {
    if (error instanceof RequirementError) return { value: null, refusal: error.message };
    throw error;
  }
}
