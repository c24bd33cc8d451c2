import { RequirementError } from '../requirement.ts';
import { columnMeans, type Rows } from './moments.ts';

const BLOCK = 4;

/** Centred values of up to four rows, one row after the other; the rest of the block is zero. */
function fillBlock(block: Float64Array, rows: Rows, from: number, means: Float64Array): void {
  const p = means.length;
  for (let r = 0; r < BLOCK; r++) {
    const row = rows[from + r];
    for (let j = 0; j < p; j++) block[r * p + j] = row ? row[j]! - means[j]! : 0;
  }
}

/** Adds the products of one block to the packed lower triangle: four rows for one read and write of a sum. */
function addProducts(sums: Float64Array, block: Float64Array, p: number): void {
  let k = 0;
  for (let i = 0; i < p; i++) {
    const a = block[i]!;
    const b = block[p + i]!;
    const c = block[2 * p + i]!;
    const d = block[3 * p + i]!;
    for (let j = 0; j <= i; j++, k++)
      sums[k]! += a * block[j]! + b * block[p + j]! + c * block[2 * p + j]! + d * block[3 * p + j]!;
  }
}

/**
 * Sums of products of deviations from given means: packed lower triangle, row by row, of p(p+1)/2 numbers.
 *
 * @example
 * scatter([[1, 2], [3, 6]], [2, 4]) // [2, 4, 8]
 */
export function scatter(rows: Rows, means: ArrayLike<number>): Float64Array {
  const p = means.length;
  const centre = Float64Array.from(means);
  const sums = new Float64Array((p * (p + 1)) / 2);
  const block = new Float64Array(BLOCK * p);
  for (let from = 0; from < rows.length; from += BLOCK) {
    fillBlock(block, rows, from, centre);
    addProducts(sums, block, p);
  }
  return sums;
}

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
