import type { Rows } from './moments.ts';

// The hot loops over many rows: typed arrays, four rows at a time. BLOCK stays in this file, because an imported
// constant is looked up on every turn of the loop under some loaders.
const BLOCK = 4;

/**
 * Writes the deviations of four rows from given means into a block, the four of a column side by side; rows beyond
 * the last are zero.
 */
function fillBlock(block: Float64Array, rows: Rows, from: number, means: Float64Array): void {
  for (let r = 0; r < BLOCK; r++) {
    const row = rows[from + r];
    for (let j = 0, at = r; j < means.length; j++, at += BLOCK) block[at] = row ? row[j]! - means[j]! : 0;
  }
}

/** Adds the products of one block to two rows of a square of sums at a time: two sums for one read of four rows. */
function addProducts(sums: Float64Array, block: Float64Array, width: number): void {
  for (let i = 0; i < width; i += 2) {
    const at = BLOCK * i;
    const a = block[at]!;
    const b = block[at + 1]!;
    const c = block[at + 2]!;
    const d = block[at + 3]!;
    const e = block[at + 4]!;
    const f = block[at + 5]!;
    const g = block[at + 6]!;
    const h = block[at + 7]!;
    let upper = i * width;
    let lower = upper + width;
    for (let j = 0; j <= at + BLOCK; j += BLOCK, upper++, lower++) {
      const w = block[j]!;
      const x = block[j + 1]!;
      const y = block[j + 2]!;
      const z = block[j + 3]!;
      sums[upper]! += a * w + b * x + c * y + d * z;
      sums[lower]! += e * w + f * x + g * y + h * z;
    }
  }
}

/**
 * Sums of products of deviations from given means: packed lower triangle, row by row, of p(p+1)/2 numbers. Four rows
 * at a time, in typed arrays: the hot loop of principal components.
 *
 * @example
 * scatter([[1, 2], [3, 6]], [2, 4]) // [2, 4, 8]
 */
export function scatter(rows: Rows, means: ArrayLike<number>): Float64Array {
  const p = means.length;
  const width = p + (p % 2);
  const centre = Float64Array.from(means);
  const sums = new Float64Array(width * width);
  const block = new Float64Array(BLOCK * width);
  for (let from = 0; from < rows.length; from += BLOCK) {
    fillBlock(block, rows, from, centre);
    addProducts(sums, block, width);
  }
  const packed = new Float64Array((p * (p + 1)) / 2);
  for (let i = 0, row = 0; i < p; row += ++i) packed.set(sums.subarray(i * width, i * width + i + 1), row);
  return packed;
}

/** Directions to project on, and the means to take off first. */
export interface Projection {
  readonly means: ArrayLike<number>;
  readonly loadings: readonly ArrayLike<number>[];
}

/**
 * Scores of many rows on given directions, as `project` gives them for one: n × k numbers, row by row.
 *
 * @example
 * projectAll([[3, 5], [1, 1]], { means: [1, 1], loadings: [[0.6, 0.8], [0.8, -0.6]] }) // [4.4, -0.8, 0, 0]
 */
export function projectAll(rows: Rows, { means, loadings }: Projection): Float64Array {
  const count = loadings.length;
  const centre = Float64Array.from(means);
  const block = new Float64Array(BLOCK * centre.length);
  const directions = Float64Array.from(loadings.flatMap((direction) => Array.from(direction)));
  // Rounded up to whole blocks, so that the last block needs no test.
  const scores = new Float64Array(Math.ceil(rows.length / BLOCK) * BLOCK * count);
  for (let from = 0; from < rows.length; from += BLOCK) {
    fillBlock(block, rows, from, centre);
    for (let k = 0, at = 0; k < count; k++) {
      let a = 0;
      let b = 0;
      let c = 0;
      let d = 0;
      for (let j = 0; j < block.length; j += BLOCK, at++) {
        const weight = directions[at]!;
        a += weight * block[j]!;
        b += weight * block[j + 1]!;
        c += weight * block[j + 2]!;
        d += weight * block[j + 3]!;
      }
      const first = from * count + k;
      scores[first] = a;
      scores[first + count] = b;
      scores[first + 2 * count] = c;
      scores[first + 3 * count] = d;
    }
  }
  return scores.subarray(0, rows.length * count);
}
