import { cholesky, invertTriangle } from '../statistics/cholesky.ts';

/**
 * Inverse and log determinant of a symmetric positive definite matrix. Throws as `cholesky` does when it is singular.
 *
 * @example
 * inverseAndLogDet([[4, 2], [2, 5]]) // { inverse: [[0.3125, -0.125], [-0.125, 0.25]], logDet: 2.772589 }
 */
export function inverseAndLogDet(matrix: readonly (readonly number[])[]): {
  inverse: number[][];
  logDet: number;
} {
  const p = matrix.length;
  const lower = invertTriangle(cholesky(matrix));
  const at = (i: number, j: number) => lower[(i * (i + 1)) / 2 + j]!;
  const inverse = Array.from({ length: p }, () => new Array<number>(p).fill(0));
  let logDet = 0;
  for (let k = 0; k < p; k++) {
    logDet -= 2 * Math.log(at(k, k));
    for (let i = 0; i <= k; i++) for (let j = 0; j <= k; j++) inverse[i]![j]! += at(k, i) * at(k, j);
  }
  return { inverse, logDet };
}
