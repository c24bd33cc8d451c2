import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { RequirementError } from '../requirement.ts';

/** A composition with the inverse of the covariance of its errors. */
export interface WeighedPoint {
  readonly values: readonly number[];
  readonly precision: readonly (readonly number[])[];
}

/** Points along a line between two ends. */
export interface LineData {
  /** Paints, anywhere on the line. */
  readonly points: readonly WeighedPoint[];
  /** Slips: all at the far end, f = 1. */
  readonly ends: readonly WeighedPoint[];
  /** Amounts known in the near end (f = 0), one per oxide; null where the line itself must tell. */
  readonly known: readonly (number | null)[];
}

/** The unknowns of a line. */
export interface LineState {
  readonly fractions: readonly number[];
  readonly near: readonly number[];
  readonly far: readonly number[];
}

/** Normal equations at a state: unknowns are every f, then the near amounts not known, then the far amounts. */
export interface LineSystem {
  readonly matrix: Matrix;
  readonly gradient: readonly number[];
  readonly cost: number;
}

/**
 * Position of every near amount among the unknowns (null where it is known).
 * @example
 * nearPositions({ points: [{}, {}], ends: [], known: [null, 0, null] }) // [2, null, 3]
 */
export function nearPositions({ points, known }: LineData): (number | null)[] {
  let next = points.length;
  return known.map((k) => (k === null ? next++ : null));
}

/**
 * χ² of a mixing line at a state: Σ rᵀQr over points and ends, Q the inverse covariances.
 * @example
 * lineCost({ points: [{ values: [3], precision: [[1]] }], ends: [], known: [0] }, { fractions: [0.1], near: [0], far: [10] }) // 4
 */
export function lineCost(data: LineData, state: LineState): number {
  const { near, far, fractions } = state;
  const square = ({ values, precision }: WeighedPoint, f: number) => {
    const r = values.map((x, j) => x - near[j]! - f * (far[j]! - near[j]!));
    return r.reduce((sum, a, j) => sum + a * times(precision[j]!, r), 0);
  };
  const points = data.points.reduce((sum, p, i) => sum + square(p, fractions[i]!), 0);
  return points + data.ends.reduce((sum, e) => sum + square(e, 1), 0);
}

/**
 * Normal equations JᵀQJ and JᵀQr of a mixing line at a state.
 * @example
 * lineSystem({ points: [{ values: [3], precision: [[1]] }], ends: [], known: [0] }, { fractions: [0.1], near: [0], far: [10] }).gradient // [20, 0.2]
 */
export function lineSystem(data: LineData, state: LineState): LineSystem {
  const nearAt = nearPositions(data);
  const oxides = data.known.length;
  const firstFar = data.points.length + nearAt.filter((at) => at !== null).length;
  const matrix = Matrix.zeros(firstFar + oxides, firstFar + oxides);
  const gradient = new Array<number>(firstFar + oxides).fill(0);
  const span = state.far.map((x, j) => x - state.near[j]!);
  const add = ({ values, precision }: WeighedPoint, f: number, own: number | null) => {
    const r = values.map((x, j) => x - state.near[j]! - f * span[j]!);
    // Every column of J is a unit vector times a slope, but for f's own, which is the span.
    const columns = span.flatMap((_, j) =>
      [
        { at: nearAt[j]!, slope: 1 - f, j },
        { at: firstFar + j, slope: f, j },
      ].filter((c) => c.at !== null && c.slope !== 0),
    );
    for (const a of columns) {
      gradient[a.at] = gradient[a.at]! + a.slope * times(precision[a.j]!, r);
      for (const b of columns) bump(matrix, a.at, b.at, a.slope * b.slope * precision[a.j]![b.j]!);
    }
    if (own === null) return;
    const weighed = precision.map((row) => times(row, span));
    gradient[own] = gradient[own]! + times(weighed, r);
    bump(matrix, own, own, times(weighed, span));
    for (const a of columns) {
      bump(matrix, own, a.at, a.slope * weighed[a.j]!);
      bump(matrix, a.at, own, a.slope * weighed[a.j]!);
    }
  };
  data.points.forEach((point, i) => {
    add(point, state.fractions[i]!, i);
  });
  for (const end of data.ends) add(end, 1, null);
  return { matrix, gradient, cost: lineCost(data, state) };
}

/**
 * Inverse of the normal equations' matrix: the covariance of the unknowns. Throws when the ends cannot be told apart.
 * @example
 * invertSystem(lineSystem({ points: [{ values: [0], precision: [[1]] }], ends: [], known: [0] }, { fractions: [0], near: [0], far: [0] })) // throws same direction
 */
export function invertSystem({ matrix }: LineSystem): Matrix {
  // Sums taken in another order may differ in the last bit; the solver wants exact symmetry.
  const even = matrix.clone().add(matrix.transpose()).mul(0.5);
  const solver = new CholeskyDecomposition(even);
  if (solver.isPositiveDefinite()) return solver.solve(Matrix.eye(even.rows));
  throw new RequirementError(
    'a mixing line needs two ends that can be told apart; paint and slip lie in the same direction',
  );
}

function times(row: readonly number[], vector: readonly number[]): number {
  let sum = 0;
  for (let j = 0; j < row.length; j++) sum += row[j]! * vector[j]!;
  return sum;
}

function bump(matrix: Matrix, row: number, column: number, by: number): void {
  matrix.set(row, column, matrix.get(row, column) + by);
}
