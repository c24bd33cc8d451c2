/** A least-squares problem at some point. */
export interface FreeProblem {
  /** Column after column of A, `rows` numbers each. */
  readonly columns: Float64Array;
  readonly rows: number;
  /** Downhill direction, −∇, at the present point. */
  readonly slope: Float64Array;
  /** Weights of the sum that must not change; null without one. */
  readonly weights: Float64Array | null;
}

export interface FreeStep {
  readonly step: Float64Array;
  /** Multiplier of the sum; 0 without one. */
  readonly multiplier: number;
  /** Place in `free` of a column that depends on those before it; −1 when there is none. */
  readonly dependent: number;
}

/** Pivots below this share of their diagonal mean that a column is a mixture of those before it. */
const DEPENDENT = 1e-11;

/**
 * The step of the free unknowns to the least of ‖Ax − b‖², keeping a weighted sum unchanged, by Cholesky on AᵀA.
 * @example
 * freeStep([0, 1], { columns: new Float64Array([1, 0, 0, 2]), rows: 2, slope: new Float64Array([1, 4]), weights: null }).step // [1, 1]
 */
export function freeStep(free: readonly number[], problem: FreeProblem): FreeStep {
  const size = free.length;
  const factor = new Float64Array(size * size);
  const dependent = factorise(factor, free, problem);
  if (dependent >= 0) return { step: new Float64Array(size), multiplier: 0, dependent };
  const step = solveFactored(factor, pick(problem.slope, free));
  if (!problem.weights) return { step, multiplier: 0, dependent: -1 };
  const weights = pick(problem.weights, free);
  const along = solveFactored(factor, weights);
  const multiplier = dot(weights, step) / dot(weights, along);
  // A single unknown under a fixed sum cannot move; rounding must not push it off its bound.
  for (let i = 0; i < size; i++) step[i] = size === 1 ? 0 : step[i]! - multiplier * along[i]!;
  return { step, multiplier, dependent: -1 };
}

function factorise(factor: Float64Array, free: readonly number[], { columns, rows }: FreeProblem): number {
  const size = free.length;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = product(columns, free[i]! * rows, free[j]! * rows, rows);
      const own = sum;
      for (let k = 0; k < j; k++) sum -= factor[i * size + k]! * factor[j * size + k]!;
      if (i > j) factor[i * size + j] = sum / factor[j * size + j]!;
      else if (sum > DEPENDENT * own) factor[i * size + i] = Math.sqrt(sum);
      else return i;
    }
  }
  return -1;
}

/** Scalar product of two columns that begin at `a` and `b`. */
function product(columns: Float64Array, a: number, b: number, rows: number): number {
  let sum = 0;
  for (let d = 0; d < rows; d++) sum += columns[a + d]! * columns[b + d]!;
  return sum;
}

function solveFactored(factor: Float64Array, right: Float64Array): Float64Array {
  const size = right.length;
  const x = right.slice();
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) x[i]! -= factor[i * size + k]! * x[k]!;
    x[i]! /= factor[i * size + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i]! -= factor[k * size + i]! * x[k]!;
    x[i]! /= factor[i * size + i]!;
  }
  return x;
}

function pick(all: Float64Array, free: readonly number[]): Float64Array {
  const out = new Float64Array(free.length);
  for (let i = 0; i < free.length; i++) out[i] = all[free[i]!]!;
  return out;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
