import { RequirementError } from '../requirement.ts';

/** One linear condition on unknowns that are zero or more: low ≤ row·x ≤ high. */
export interface Condition {
  readonly row: readonly number[];
  readonly low: number;
  readonly high: number;
}

/** A corner of the feasible set. */
export type Corner = readonly number[];

const MOST_BASES = 200_000;

/**
 * Corners of the set of x ≥ 0 that meet every condition, by trying each basis of the system with slacks: a linear
 * goal has its least and greatest value at two of them. An empty list means that no x meets all. Meant for a
 * handful of unknowns; throws when there would be more than 200,000 bases to try.
 * @example
 * feasibleCorners(2, [{ row: [1, 1], low: 1, high: 1 }]) // [[1, 0], [0, 1]]
 * feasibleCorners(1, [{ row: [1], low: 2, high: 3 }]) // [[3], [2]]
 * feasibleCorners(1, [{ row: [1], low: -3, high: -2 }]) // []
 */
export function feasibleCorners(unknowns: number, conditions: readonly Condition[]): Corner[] {
  const { rows, right } = withSlacks(unknowns, conditions);
  const columns = rows[0]?.length ?? 0;
  if (choose(columns, rows.length) > MOST_BASES)
    throw new RequirementError('feasible ranges need fewer unknowns or conditions than these');
  const corners: Corner[] = [];
  for (const basis of subsets(columns, rows.length)) {
    const values = solveSquare(rows, right, basis);
    if (!values?.every((v) => v > -TOLERANCE)) continue;
    const corner = new Array<number>(unknowns).fill(0);
    basis.forEach((column, i) => {
      if (column < unknowns) corner[column] = Math.max(0, values[i]!);
    });
    corners.push(corner);
  }
  return corners;
}

/**
 * Least and greatest value of a linear goal over corners. Throws when there is none.
 * @example
 * rangeOver([[2, 0], [0, 3]], [1, 1]) // { low: 2, high: 3 }
 */
export function rangeOver(
  corners: readonly Corner[],
  goal: readonly number[],
): { low: number; high: number } {
  if (corners.length === 0)
    throw new RequirementError('a range needs at least one feasible corner; found none');
  const values = corners.map((x) => goal.reduce((sum, g, j) => sum + g * x[j]!, 0));
  return { low: Math.min(...values), high: Math.max(...values) };
}

const TOLERANCE = 1e-10;

/** Rows scaled to a largest coefficient of 1; an interval becomes a row with a slack and a bound on the slack. */
function withSlacks(unknowns: number, conditions: readonly Condition[]) {
  const plain: { row: readonly number[]; right: number; slack: number }[] = [];
  for (const { row, low, high } of conditions) {
    const scale = Math.max(...row.map(Math.abs)) || 1;
    const scaled = row.map((a) => a / scale);
    if (low === high) plain.push({ row: scaled, right: low / scale, slack: 0 });
    else {
      if (Number.isFinite(low)) plain.push({ row: scaled, right: low / scale, slack: -1 });
      if (Number.isFinite(high)) plain.push({ row: scaled, right: high / scale, slack: 1 });
    }
  }
  const slacks = plain.flatMap((line, i) => (line.slack === 0 ? [] : [i]));
  const rows = plain.map((line, i) => [
    ...line.row.slice(0, unknowns),
    ...slacks.map((s) => (s === i ? line.slack : 0)),
  ]);
  return { rows, right: plain.map((line) => line.right) };
}

function choose(n: number, k: number): number {
  let ways = 1;
  for (let i = 0; i < k; i++) ways = (ways * (n - i)) / (i + 1);
  return ways;
}

/**
 * Every way to choose `k` of 0..n−1, in order.
 * @example
 * [...subsets(3, 2)] // [[0, 1], [0, 2], [1, 2]]
 */
export function* subsets(n: number, k: number, from = 0): Generator<number[]> {
  if (k === 0) yield [];
  else
    for (let first = from; first <= n - k; first++)
      for (const rest of subsets(n, k - 1, first + 1)) yield [first, ...rest];
}

function solveSquare(
  rows: readonly (readonly number[])[],
  right: readonly number[],
  basis: readonly number[],
) {
  const size = rows.length;
  const a = rows.map((row, i) => [...basis.map((column) => row[column]!), right[i]!]);
  for (let pivot = 0; pivot < size; pivot++) {
    let best = pivot;
    for (let i = pivot + 1; i < size; i++) if (Math.abs(a[i]![pivot]!) > Math.abs(a[best]![pivot]!)) best = i;
    [a[pivot], a[best]] = [a[best]!, a[pivot]!];
    if (Math.abs(a[pivot]![pivot]!) < 1e-12) return null;
    for (let i = 0; i < size; i++) {
      if (i === pivot) continue;
      const factor = a[i]![pivot]! / a[pivot]![pivot]!;
      for (let j = pivot; j <= size; j++) a[i]![j]! -= factor * a[pivot]![j]!;
    }
  }
  return a.map((row, i) => row[size]! / row[i]!);
}
