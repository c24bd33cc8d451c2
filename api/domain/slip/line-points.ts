import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { closedCovariance } from './closed-covariance.ts';
import { weighable } from './measurement.ts';
import type { WeighedPoint } from './mixing-line-system.ts';
import type { Analysed } from './types.ts';

/** Analyses as points in oxide space, and how many of their coordinates follow from the others by closure. */
export interface LinePoints {
  readonly points: readonly WeighedPoint[];
  /** True when the oxides used are all that each analysis holds: then every point sums to 100. */
  readonly closed: boolean;
}

/** Weight of the sum where closure fixes it: enough for the arithmetic, far below any error. */
const RIDGE = 1e-6;

/**
 * Analyses as points with the inverse covariance of their errors, closure carried. Where the oxides used are all
 * there are, closure leaves no error in the sum; a vanishing one is put in its place, which moves no result, since
 * every point and both ends then sum to 100.
 * @example
 * of = (value) => ({ value, limit: null, sigma: 1, sigmaBasis: 'stated', resolution: null })
 * linePoints([{ label: 'a', spots: 1, amounts: { PbO: of(50), SiO2: of(50) } }], ['PbO', 'SiO2']).closed // true
 */
export function linePoints(all: readonly Analysed[], oxides: readonly string[]): LinePoints {
  const closed = all.every((a) => Object.keys(a.amounts).length === oxides.length);
  const points = all.map((analysed) => {
    const covariance = closedCovariance(analysed, oxides);
    const read = oxides.map((oxide) => weighable(analysed, oxide).value);
    const scale = closed ? 100 / read.reduce((sum, x) => sum + x, 0) : 1;
    const mean = covariance.reduce((sum, row, j) => sum + row[j]!, 0) / oxides.length;
    const ridged = covariance.map((row) => row.map((v) => scale ** 2 * (v + (closed ? RIDGE * mean : 0))));
    return { values: read.map((x) => scale * x), precision: inverse(ridged) };
  });
  return { points, closed };
}

function inverse(covariance: number[][]): number[][] {
  const matrix = new Matrix(covariance);
  return new CholeskyDecomposition(matrix.clone().add(matrix.transpose()).mul(0.5))
    .solve(Matrix.eye(matrix.rows))
    .to2DArray();
}
