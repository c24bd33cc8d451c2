import { cholesky, invertTriangle } from '../statistics/cholesky.ts';

/**
 * Vectors in units of their errors: L⁻¹·v for each, with V = L·Lᵀ the covariance of the errors. Sums of squares of
 * the result are χ² when V is right. Throws when V is singular.
 * @example
 * whiten([[1, 2]], [[1, 0], [0, 4]]) // [[1, 1]]
 * whiten([[1, 2]], [[1, 1], [1, 1]]) // throws positive definite
 */
export function whiten(vectors: readonly (readonly number[])[], covariance: readonly number[][]): number[][] {
  const inverse = invertTriangle(cholesky(covariance));
  return vectors.map((v) => {
    const out = new Array<number>(v.length);
    for (let i = 0, at = 0; i < v.length; i++) {
      let sum = 0;
      for (let j = 0; j <= i; j++) sum += inverse[at++]! * v[j]!;
      out[i] = sum;
    }
    return out;
  });
}

/**
 * Inner product of two vectors of one length.
 * @example
 * dot([1, 2], [3, 4]) // 11
 */
export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
