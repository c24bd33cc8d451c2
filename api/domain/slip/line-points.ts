import { CholeskyDecomposition, Matrix } from 'ml-matrix';
import { RequirementError } from '../requirement.ts';
import { closedCovariance } from './closed-covariance.ts';
import { weighable } from './measurement.ts';
import type { WeighedPoint } from './mixing-line-system.ts';
import type { Analysed } from './types.ts';

/** Analyses as points in oxide space, and how many of their coordinates follow from the others by closure. */
export interface LinePoints {
  readonly points: readonly WeighedPoint[];
  /** Of each point, whether the oxides used are all that its analysis holds: then it sums to 100. */
  readonly closed: readonly boolean[];
}

/** Weight of the sum where closure fixes it: enough for the arithmetic, far below any error. */
const RIDGE = 1e-6;

/**
 * Analyses as points with the inverse covariance of their errors, closure carried. Where the oxides used are all
 * that an analysis holds, closure leaves no error in its sum; a vanishing one is put in its place, so that the sum is
 * held to 100 (a slip is often measured for fewer oxides than the paint on it). Throws where errors of an analysis
 * say nothing of an oxide.
 * @example
 * of = (value) => ({ value, limit: null, sigma: 1, sigmaBasis: 'stated', resolution: null })
 * linePoints([{ label: 'a', spots: 1, amounts: { PbO: of(50), SiO2: of(50) } }], ['PbO', 'SiO2']).closed // [true]
 */
export function linePoints(all: readonly Analysed[], oxides: readonly string[]): LinePoints {
  const closed = all.map((a) => Object.keys(a.amounts).length === oxides.length);
  const points = all.map((analysed, i) => {
    const covariance = closedCovariance(analysed, oxides);
    const read = oxides.map((oxide) => weighable(analysed, oxide).value);
    const scale = closed[i] ? 100 / read.reduce((sum, x) => sum + x, 0) : 1;
    const mean = covariance.reduce((sum, row, j) => sum + row[j]!, 0) / oxides.length;
    const ridged = covariance.map((row) => row.map((v) => scale ** 2 * (v + (closed[i] ? RIDGE * mean : 0))));
    return { values: read.map((x) => scale * x), precision: inverse(ridged, analysed.label) };
  });
  return { points, closed };
}

function inverse(covariance: number[][], label: string): number[][] {
  const matrix = new Matrix(covariance);
  const factor = new CholeskyDecomposition(matrix.clone().add(matrix.transpose()).mul(0.5));
  if (!factor.isPositiveDefinite())
    throw new RequirementError(
      `a mixing line needs errors that leave every oxide to be weighed; those of ${label} do not`,
    );
  return factor.solve(Matrix.eye(matrix.rows)).to2DArray();
}
