import { RequirementError } from '../requirement.ts';
import { type FreeStep, freeStep } from './free-step.ts';

/** Least ‖Ax − b‖² with lower ≤ x ≤ upper and, if given, weights·x = total. */
export interface BoxProblem {
  /** Column after column of A, each as long as `right`. */
  readonly columns: Float64Array;
  /** b. */
  readonly right: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** Weights are zero or more. */
  readonly sum: { readonly weights: Float64Array; readonly total: number } | null;
  /** A point inside bounds and sum to start from. */
  readonly start?: Float64Array;
}

interface State {
  readonly x: Float64Array;
  readonly slope: Float64Array;
  /** Indices not held at a bound, in the order in which they were freed. */
  readonly free: number[];
  readonly barred: Set<number>;
}

/**
 * Bounded least squares by the active-set method of Lawson & Hanson (Solving Least Squares Problems, 1974, ch. 23),
 * with upper bounds and one fixed sum. Columns are brought to one length first, so that their units do not matter.
 * Returns x. Throws when bounds and sum contradict each other, and when the search does not end.
 * @example
 * boxLeastSquares({ columns: new Float64Array([1, 0, 0, 1]), right: new Float64Array([2, -1]), lower: new Float64Array(2), upper: new Float64Array([1, 1]), sum: null }) // [1, 0]
 */
export function boxLeastSquares(given: BoxProblem): Float64Array {
  const { x, ended } = searchBox(given);
  if (!ended)
    throw new RequirementError(
      'least squares needs data on which the search ends; after 30 rounds an unknown it still exchanges bounds',
    );
  return x;
}

/**
 * The same search, and whether it ended at the least; else x is the last point it came to, inside the bounds and no
 * worse than the start. For a step within a larger search, which judges for itself whether it has settled.
 * @example
 * searchBox({ columns: new Float64Array([1, 0, 0, 1]), right: new Float64Array([2, -1]), lower: new Float64Array(2), upper: new Float64Array([1, 1]), sum: null }).ended // true
 */
export function searchBox(given: BoxProblem): { x: Float64Array; ended: boolean } {
  const lengths = columnLengths(given);
  const { x: y, ended } = solveScaled(scaledBy(given, lengths));
  // A bound is given back as it came, not as it comes out of scaling there and back.
  const x = y.map((v, j) => Math.min(given.upper[j]!, Math.max(given.lower[j]!, v / lengths[j]!)));
  return { x, ended };
}

/** Euclidean length of each column; 1 for a column of zeros. */
function columnLengths({ columns, right, lower }: BoxProblem): Float64Array {
  return lower.map((_, j) => {
    const column = columns.subarray(j * right.length, (j + 1) * right.length);
    return Math.sqrt(column.reduce((sum, a) => sum + a * a, 0)) || 1;
  });
}

/** The same problem in y = length·x, whose columns have length one. */
function scaledBy(given: BoxProblem, lengths: Float64Array): BoxProblem {
  const rows = given.right.length;
  const times = (v: Float64Array) => v.map((a, j) => a * lengths[j]!);
  const over = (v: Float64Array) => v.map((a, j) => a / lengths[j]!);
  return {
    columns: given.columns.map((a, at) => a / lengths[Math.floor(at / rows)]!),
    right: given.right,
    lower: times(given.lower),
    upper: times(given.upper),
    sum: given.sum && { weights: over(given.sum.weights), total: given.sum.total },
    ...(given.start ? { start: times(given.start) } : {}),
  };
}

function solveScaled(given: BoxProblem): { x: Float64Array; ended: boolean } {
  const problem = strengthen(given);
  const n = given.lower.length;
  const x = given.start?.slice() ?? feasibleStart(given);
  const free = indices(n).filter((j) => x[j]! > given.lower[j]! && x[j]! < given.upper[j]!);
  const state: State = { x, slope: new Float64Array(n), free, barred: new Set() };
  const { columns, right, sum } = problem;
  const tolerance = 1e-11 * largestSlope(problem);
  for (let round = 0; round < 30 * n + 60; round++) {
    seekSlope(problem, state);
    if (sum && free.length === 0 && !freeAny(problem, state)) return { x, ended: true };
    const found = freeStep(free, {
      columns,
      rows: right.length,
      slope: state.slope,
      weights: sum?.weights ?? null,
    });
    if (found.dependent >= 0) state.barred.add(free.splice(found.dependent, 1)[0]!);
    else if (take(problem, state, found)) {
      seekSlope(problem, state);
      if (!freeBest(problem, state, { multiplier: found.multiplier, tolerance })) return { x, ended: true };
    }
  }
  return { x, ended: false };
}

const indices = (n: number) => Array.from({ length: n }, (_, i) => i);

/** Slope of a column that points along b: the size that slopes are measured against. */
function largestSlope({ columns, right }: BoxProblem): number {
  const length = (v: Float64Array) => Math.sqrt(v.reduce((sum, a) => sum + a * a, 0));
  return Math.max(length(columns) * length(right), 1e-300);
}

/** One more row, a multiple of sum = total, leaves the answer as it is and keeps the free columns independent. */
function strengthen(problem: BoxProblem): BoxProblem {
  if (!problem.sum) return problem;
  const { weights, total } = problem.sum;
  const rows = problem.right.length;
  const squares = (v: Float64Array) => v.reduce((sum, a) => sum + a * a, 0);
  const rho = Math.sqrt(squares(problem.columns) / squares(weights)) || 1;
  const columns = new Float64Array((rows + 1) * weights.length);
  for (let k = 0; k < weights.length; k++) {
    for (let d = 0; d < rows; d++) columns[k * (rows + 1) + d] = problem.columns[k * rows + d]!;
    columns[k * (rows + 1) + rows] = rho * weights[k]!;
  }
  return { ...problem, columns, right: Float64Array.of(...problem.right, rho * total) };
}

/** Every unknown at its lower bound, then raised in turn until the sum is met. */
function feasibleStart({ lower, upper, sum }: BoxProblem): Float64Array {
  const x = lower.slice();
  if (!sum) return x;
  let missing = sum.total - x.reduce((s, v, j) => s + v * sum.weights[j]!, 0);
  for (let j = 0; j < x.length && missing > 0; j++) {
    if (!(sum.weights[j]! > 0)) continue;
    const rise = Math.min(upper[j]! - x[j]!, missing / sum.weights[j]!);
    x[j]! += rise;
    missing -= rise * sum.weights[j]!;
  }
  if (Math.abs(missing) > 1e-9 * Math.abs(sum.total))
    throw new RequirementError(
      `bounds need to allow a sum of ${sum.total}; they miss it by ${Number(missing.toPrecision(3))}`,
    );
  return x;
}

function seekSlope({ columns, right }: BoxProblem, { x, slope }: State): void {
  const rows = right.length;
  const gap = right.slice();
  for (let k = 0; k < x.length; k++) {
    const amount = x[k]!;
    if (amount !== 0) for (let d = 0; d < rows; d++) gap[d]! -= amount * columns[k * rows + d]!;
  }
  for (let k = 0; k < x.length; k++) {
    let sum = 0;
    for (let d = 0; d < rows; d++) sum += columns[k * rows + d]! * gap[d]!;
    slope[k] = sum;
  }
}

/** Moves as far as the bounds allow; true when the whole step was taken. */
function take({ lower, upper }: BoxProblem, { x, free, barred }: State, { step }: FreeStep): boolean {
  let share = 1;
  let blocker = -1;
  for (let i = 0; i < free.length; i++) {
    const j = free[i]!;
    const room =
      step[i]! < 0 ? (lower[j]! - x[j]!) / step[i]! : step[i]! > 0 ? (upper[j]! - x[j]!) / step[i]! : 1;
    if (room < share) [share, blocker] = [Math.max(room, 0), i];
  }
  for (let i = 0; i < free.length; i++) {
    const j = free[i]!;
    x[j] = Math.min(upper[j]!, Math.max(lower[j]!, x[j]! + share * step[i]!));
  }
  if (share > 0) barred.clear();
  if (blocker < 0) return true;
  const j = free[blocker]!;
  x[j] = step[blocker]! < 0 ? lower[j]! : upper[j]!;
  free.splice(blocker, 1);
  if (share === 0) barred.add(j);
  return false;
}

/** Frees the bound whose release gains most; false when none gains, which is the optimum. */
function freeBest(
  { lower, upper, sum }: BoxProblem,
  { x, slope, free, barred }: State,
  { multiplier, tolerance }: { multiplier: number; tolerance: number },
): boolean {
  const held = new Set(free);
  let best = -1;
  let most = tolerance;
  for (let j = 0; j < x.length; j++) {
    if (held.has(j) || barred.has(j) || lower[j]! >= upper[j]!) continue;
    const pull = slope[j]! - multiplier * (sum?.weights[j] ?? 0);
    const gain = x[j]! <= lower[j]! ? pull : -pull;
    if (gain > most) [most, best] = [gain, j];
  }
  if (best >= 0) free.push(best);
  return best >= 0;
}

/** With all at bounds the sum has no multiplier: free the unknown that would rise most per unit of sum. */
function freeAny({ lower, upper, sum }: BoxProblem, { slope, free, barred }: State): boolean {
  const movable = (j: number) => lower[j]! < upper[j]! && sum!.weights[j]! > 0 && !barred.has(j);
  const able = indices(slope.length).filter(movable);
  if (able.length === 0) return false;
  const ratio = (j: number) => slope[j]! / sum!.weights[j]!;
  free.push(able.reduce((best, j) => (ratio(j) > ratio(best) ? j : best)));
  return true;
}
