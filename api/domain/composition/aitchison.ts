import { RequirementError } from '../requirement.ts';
import { clr, clrInverse, logsOf } from './log-ratio.ts';

/**
 * Aitchison distance of two compositions of the same parts: Euclidean distance of their centred log-ratios, in
 * natural-log units. Throws when the numbers of parts differ or a part is not positive.
 * Aitchison 1986, doi 10.1007/978-94-009-4109-0.
 * @example
 * aitchisonDistance([Math.E, 1], [1, 1]) // 0.7071068
 * aitchisonDistance([1, 2], [1, 2, 3]) // throws the same parts
 */
export function aitchisonDistance(a: readonly number[], b: readonly number[]): number {
  if (a.length !== b.length)
    throw new RequirementError(`a distance needs the same parts; found ${a.length} and ${b.length}`);
  const [first, second] = [clr(a), clr(b)];
  return Math.sqrt(first.reduce((sum, z, at) => sum + (z - second[at]!) ** 2, 0));
}

/**
 * Compositional centre of rows of positive parts: their geometric mean by part, closed to a total (100 by default).
 * Throws when there are no rows or their lengths differ.
 * @example
 * compositionalCentre([[1, 4], [4, 1]]) // [50, 50]
 */
export function compositionalCentre(rows: readonly (readonly number[])[], total = 100): number[] {
  const centred = sameLength(rows, 1, 'a centre').map(clr);
  return clrInverse(
    centred[0]!.map((_, part) => centred.reduce((sum, row) => sum + row[part]!, 0) / rows.length),
    total,
  );
}

/**
 * Variation matrix: the variance (divisor n − 1) of ln(x_i/x_j) over rows, for every pair of parts; symmetric, with a
 * zero diagonal. A small entry means two parts keep their ratio. Throws with fewer than 2 rows.
 * Aitchison 1986, definition 4.4.
 * @example
 * variationMatrix([[1, 1], [Math.E, 1]]) // [[0, 0.5], [0.5, 0]]
 */
export function variationMatrix(rows: readonly (readonly number[])[]): number[][] {
  const logs = sameLength(rows, 2, 'a variation matrix').map((row) => logsOf(row, 'a variation matrix'));
  const parts = logs[0]!.map((_, part) => part);
  return parts.map((i) => parts.map((j) => (i === j ? 0 : variance(logs.map((row) => row[i]! - row[j]!)))));
}

/**
 * Total (metric) variance of compositions: the trace of the clr covariance (divisor n − 1), which is the sum of the
 * variation matrix over 2D. Throws with fewer than 2 rows.
 * @example
 * totalVariance([[1, 1], [Math.E, 1]]) // 0.25
 */
export function totalVariance(rows: readonly (readonly number[])[]): number {
  const centred = sameLength(rows, 2, 'a total variance').map(clr);
  return centred[0]!.reduce((sum, _, part) => sum + variance(centred.map((row) => row[part]!)), 0);
}

function sameLength(rows: readonly (readonly number[])[], least: number, whose: string) {
  if (rows.length < least)
    throw new RequirementError(`${whose} needs at least ${least} rows; there are ${rows.length}`);
  const odd = rows.findIndex((row) => row.length !== rows[0]!.length);
  if (odd >= 0)
    throw new RequirementError(
      `${whose} needs the same parts in every row; row ${odd + 1} has ${rows[odd]!.length}, row 1 has ${rows[0]!.length}`,
    );
  return rows;
}

function variance(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
}
