import { RequirementError } from '../requirement.ts';
import { cholesky, invertTriangle } from './cholesky.ts';
import { covariance } from './covariance.ts';
import { columnMeans, type Rows } from './moments.ts';

/** Below this the room that a leave-one-out distance is divided by is rounding. */
const LEAST_ROOM = 1e-12;

/** Where a group lies and how it spreads, ready for distances: mean and packed L⁻¹ of its covariance. */
export interface Spread {
  readonly mean: ArrayLike<number>;
  readonly inverseCholesky: ArrayLike<number>;
}

/**
 * Squared Mahalanobis distance D² = (x − mean)ᵀ S⁻¹ (x − mean), with S⁻¹ = L⁻ᵀL⁻¹ given as packed L⁻¹.
 * Mahalanobis 1936; checked against NIST/SEMATECH e-Handbook 6.5.4.1 and R.
 *
 * @example
 * mahalanobis([3, 4], { mean: [1, 1], inverseCholesky: [0.5, 0, 1] }) // 10
 */
export function mahalanobis(x: ArrayLike<number>, spread: Spread): number {
  const { mean, inverseCholesky: inverse } = spread;
  let d2 = 0;
  for (let i = 0, at = 0; i < mean.length; i++) {
    let w = 0;
    for (let j = 0; j <= i; j++, at++) w += inverse[at]! * (x[j]! - mean[j]!);
    d2 += w * w;
  }
  return d2;
}

/**
 * The vector S⁻¹(x − mean). Its product with x − mean, term by term, shares D² out among the coordinates.
 *
 * @example
 * mahalanobisGradient([3, 4], { mean: [1, 1], inverseCholesky: [0.5, 0, 1] }) // [0.5, 3]
 */
export function mahalanobisGradient(x: ArrayLike<number>, spread: Spread): number[] {
  const { mean, inverseCholesky: inverse } = spread;
  const gradient = new Array<number>(mean.length).fill(0);
  for (let i = 0, row = 0; i < mean.length; row += ++i) {
    let w = 0;
    for (let j = 0; j <= i; j++) w += inverse[row + j]! * (x[j]! - mean[j]!);
    for (let j = 0; j <= i; j++) gradient[j]! += w * inverse[row + j]!;
  }
  return gradient;
}

/**
 * Mean and packed L⁻¹ of the sample covariance (divisor n − 1) of a group of rows. Throws when n − 1 < p, or when
 * the covariance is singular all the same.
 *
 * @example
 * sampleSpread([[0, 0], [2, 0], [0, 2], [2, 2]]).mean // [1, 1]
 * sampleSpread([[0, 0], [1, 2]]) // throws needs n − 1 ≥ p; found n = 2, p = 2
 */
export function sampleSpread(rows: Rows): {
  mean: number[];
  covariance: number[][];
  inverseCholesky: Float64Array;
} {
  const n = rows.length;
  const p = rows[0]?.length ?? 0;
  if (n - 1 < p) throw new RequirementError(`a sample covariance needs n − 1 ≥ p; found n = ${n}, p = ${p}`);
  const matrix = covariance(rows);
  return {
    mean: columnMeans(rows),
    covariance: matrix,
    inverseCholesky: invertTriangle(cholesky(matrix)),
  };
}

/**
 * Leave-one-out D² of a member from its in-sample D²: the distance it would have from the mean and sample
 * covariance of the n − 1 others, without refitting:
 * (n/(n−1))² · ((n−2)/(n−1)) · d / (1 − n·d/(n−1)²). Where the others do not spread towards it the last bracket is
 * nothing but rounding; it is then taken as 10⁻¹², so that the distance is huge and finite, and ranks furthest. Needs
 * n − 2 ≥ p, or the others have no covariance.
 *
 * @example
 * leaveOneOutD2(1.75769, { n: 5, p: 3 }) // 4.569987
 * leaveOneOutD2(49 / 8, { n: 8, p: 1 }) > 1e12 // true
 * leaveOneOutD2(1, { n: 4, p: 3 }) // throws needs n − 2 ≥ p; found n = 4, p = 3
 */
export function leaveOneOutD2(d2: number, { n, p }: { readonly n: number; readonly p: number }): number {
  if (n - 2 < p)
    throw new RequirementError(`a leave-one-out distance needs n − 2 ≥ p; found n = ${n}, p = ${p}`);
  const room = Math.max(LEAST_ROOM, 1 - (n * d2) / (n - 1) ** 2);
  return ((n / (n - 1)) ** 2 * ((n - 2) / (n - 1)) * d2) / room;
}
