import { RequirementError } from '../requirement.ts';

/** A pivot below this share of its diagonal is a linear dependence seen through rounding. */
const DEPENDENT = 1e-12;

/**
 * Cholesky factor of a symmetric positive definite p × p matrix: lower triangle L with L·Lᵀ = matrix, packed row
 * by row. Throws when the matrix is singular: a column is, to rounding, a sum of the others.
 *
 * @example
 * cholesky([[4, 2], [2, 5]]) // [2, 1, 2]
 * cholesky([[1, 1], [1, 1]]) // throws cholesky needs a positive definite matrix
 */
export function cholesky(matrix: readonly ArrayLike<number>[]): Float64Array {
  const p = matrix.length;
  const l = new Float64Array((p * (p + 1)) / 2);
  for (let i = 0, row = 0; i < p; row += ++i)
    for (let j = 0, other = 0; j <= i; other += ++j) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k++) sum -= l[row + k]! * l[other + k]!;
      l[row + j] = i === j ? pivot(sum, matrix[i]![i]!, i) : sum / l[other + j]!;
    }
  return l;
}

function pivot(left: number, diagonal: number, at: number): number {
  if (left > DEPENDENT * diagonal) return Math.sqrt(left);
  throw new RequirementError(
    `cholesky needs a positive definite matrix; column ${at + 1} follows from the columns before it`,
  );
}

/**
 * Inverse of a packed lower triangle, packed the same way; w = L⁻¹(x − mean) then gives D² = Σw².
 *
 * @example
 * invertTriangle([2, 1, 2]) // [0.5, -0.25, 0.5]
 */
export function invertTriangle(packed: ArrayLike<number>): Float64Array {
  const p = (Math.sqrt(8 * packed.length + 1) - 1) / 2;
  const inverse = new Float64Array(packed.length);
  for (let i = 0, row = 0; i < p; row += ++i) {
    const diagonal = packed[row + i]!;
    inverse[row + i] = 1 / diagonal;
    for (let j = 0; j < i; j++) {
      let sum = 0;
      for (let k = j, at = (j * (j + 1)) / 2 + j; k < i; at += ++k) sum += packed[row + k]! * inverse[at]!;
      inverse[row + j] = -sum / diagonal;
    }
  }
  return inverse;
}
