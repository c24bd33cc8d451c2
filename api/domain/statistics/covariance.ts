import { RequirementError } from '../requirement.ts';
import { scatter } from './blocks.ts';
import { columnMeans, type Rows } from './moments.ts';

/**
 * A full symmetric p × p matrix from its packed lower triangle, every entry divided by `divisor`.
 *
 * @example
 * unpackSymmetric([2, 4, 8], 2) // [[1, 2], [2, 4]]
 */
export function unpackSymmetric(packed: ArrayLike<number>, divisor = 1): number[][] {
  const p = (Math.sqrt(8 * packed.length + 1) - 1) / 2;
  const at = (i: number, j: number) => packed[i >= j ? (i * (i + 1)) / 2 + j : (j * (j + 1)) / 2 + i]!;
  return Array.from({ length: p }, (_, i) => Array.from({ length: p }, (_, j) => at(i, j) / divisor));
}

/**
 * Sample covariance of the columns of a table (n × p → p × p), divisor n − 1. Throws with fewer than two rows.
 * Checked against NIST/SEMATECH e-Handbook 6.5.4.1.
 *
 * @example
 * covariance([[4, 2], [4.2, 2.1], [3.9, 2], [4.3, 2.1], [4.1, 2.2]]) // [[0.025, 0.0075], [0.0075, 0.007]]
 * covariance([[1, 2]]) // throws covariance needs at least two rows; found 1
 */
export function covariance(rows: Rows): number[][] {
  if (rows.length < 2) throw new RequirementError(`covariance needs at least two rows; found ${rows.length}`);
  return unpackSymmetric(scatter(rows, columnMeans(rows)), rows.length - 1);
}
