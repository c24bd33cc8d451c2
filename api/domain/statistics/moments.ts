import { RequirementError } from '../requirement.ts';

/** A table of numbers, one row per sample, every row of the same length. */
export type Rows = readonly ArrayLike<number>[];

/** Number of rows and columns of a table; throws when it is empty or ragged. */
function shapeOf(rows: Rows, name: string): { n: number; p: number } {
  const p = rows[0]?.length ?? 0;
  if (p === 0) throw new RequirementError(`${name} needs at least one row and one column; found none`);
  const ragged = rows.findIndex((r) => r.length !== p);
  if (ragged >= 0)
    throw new RequirementError(
      `${name} needs rows of ${p} numbers; row ${ragged + 1} has ${rows[ragged]!.length}`,
    );
  return { n: rows.length, p };
}

/**
 * Arithmetic mean of some numbers. Throws when there are none.
 *
 * @example
 * mean([4, 4.2, 3.9, 4.3, 4.1]) // 4.1
 * mean([]) // throws mean needs at least one number
 */
export function mean(values: ArrayLike<number>): number {
  if (values.length === 0) throw new RequirementError('mean needs at least one number; found none');
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}

/**
 * Mean of every column of a table (n rows × p columns → p means). Throws when the table is empty or ragged, or
 * holds something that is not a finite number, naming its row and column.
 *
 * @example
 * columnMeans([[4, 2], [4.2, 2.1], [3.9, 2]]) // [4.033333, 2.033333]
 * columnMeans([[1, 2], [3, NaN]]) // throws row 2, column 2
 */
export function columnMeans(rows: Rows): number[] {
  const { n, p } = shapeOf(rows, 'columnMeans');
  const sums = new Float64Array(p);
  for (const row of rows) for (let j = 0; j < p; j++) sums[j]! += row[j]!;
  for (let j = 0; j < p; j++) if (!Number.isFinite(sums[j]!)) throw notFinite(rows, j);
  return Array.from(sums, (s) => s / n);
}

function notFinite(rows: Rows, column: number): RequirementError {
  const row = rows.findIndex((r) => !Number.isFinite(r[column]!));
  const found = rows[row]?.[column];
  return new RequirementError(
    `statistics need finite numbers; row ${row + 1}, column ${column + 1} holds ${found}`,
  );
}

/**
 * Standard deviation of every column (divisor n − 1). Throws with fewer than two rows.
 *
 * @example
 * columnDeviations([[1, 10], [3, 10]]) // [1.414214, 0]
 */
export function columnDeviations(rows: Rows): number[] {
  const means = columnMeans(rows);
  if (rows.length < 2) throw new RequirementError('a standard deviation needs two rows; found 1');
  const sums = new Float64Array(means.length);
  for (const row of rows) for (let j = 0; j < means.length; j++) sums[j]! += (row[j]! - means[j]!) ** 2;
  return Array.from(sums, (s) => Math.sqrt(s / (rows.length - 1)));
}

/**
 * Quantile of some numbers by linear interpolation between order statistics (R's default, type 7; Hyndman and
 * Fan 1996, doi 10.2307/2684934). Throws when there are none or q is outside 0–1.
 *
 * @example
 * quantile([1, 2, 3, 4], 0.25) // 1.75
 */
export function quantile(values: ArrayLike<number>, q: number): number {
  if (values.length === 0) throw new RequirementError('quantile needs at least one number; found none');
  if (!(q >= 0 && q <= 1)) throw new RequirementError(`quantile needs q between 0 and 1; found ${q}`);
  const sorted = Float64Array.from(values).sort();
  const at = (sorted.length - 1) * q;
  const low = Math.floor(at);
  const below = sorted[low]!;
  const above = sorted[Math.min(low + 1, sorted.length - 1)]!;
  return below + (at - low) * (above - below);
}
