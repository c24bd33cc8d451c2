import { PCA } from 'ml-pca';
import { RequirementError } from '../requirement.ts';
import { type Projection, scatter } from './blocks.ts';
import { unpackSymmetric } from './covariance.ts';
import { columnMeans, type Rows } from './moments.ts';

/** Eigenvalues below this share of the largest are rounding of a null direction, and dropped. */
const NULL_SHARE = 1e-12;
/** A standard deviation below this share of the mean is the rounding of rows that are all the same. */
const SAME_SHARE = 1e-12;
/** Loadings this close to the largest count as tied; the first of them is made positive. */
const TIE = 1e-9;

/** Principal components of a table; `loadings[component][column]`, unit length, largest variance first. */
export interface PrincipalComponents {
  readonly means: readonly number[];
  readonly eigenvalues: readonly number[];
  /** Share of the total variance, 0–1. */
  readonly explained: readonly number[];
  readonly loadings: readonly (readonly number[])[];
}

/** The same direction with its largest absolute loading positive: the sign of a component is arbitrary. */
function oriented(direction: readonly number[]): number[] {
  const largest = Math.max(...direction.map(Math.abs));
  const first = direction.find((v) => Math.abs(v) >= largest * (1 - TIE)) ?? 1;
  return direction.map((v) => (first < 0 ? -v : v));
}

/**
 * Principal components of the columns of a table (n × p), by the eigenvectors of its covariance (divisor n − 1).
 * The covariance is accumulated here and only its eigenvectors are asked of ml-pca, many times faster than its
 * own decomposition of the rows. Null components (as of centred log-ratios) are dropped; the largest absolute
 * loading of each component is positive. Throws with fewer than two rows, or when nothing varies.
 *
 * @example
 * pca([[1, 1], [2, 2], [3, 3.1]]).explained // [0.9998116, 0.0001884015]
 * pca([[1, 1], [3, 3]]).eigenvalues // [4]
 * pca([[1, 1], [3, 3]]).loadings // [[0.7071068, 0.7071068]]
 * pca([[1, 2], [1, 2]]) // throws pca needs something that varies
 */
export function pca(rows: Rows): PrincipalComponents {
  if (rows.length < 2) throw new RequirementError(`pca needs at least two rows; found ${rows.length}`);
  const means = columnMeans(rows);
  const matrix = unpackSymmetric(scatter(rows, means), rows.length - 1);
  const rounding = SAME_SHARE ** 2 * means.reduce((sum, v) => sum + v * v, 0);
  const { eigenvalues, loadings } = principalAxes(matrix, rounding);
  if (eigenvalues.length === 0)
    throw new RequirementError('pca needs something that varies; all rows are the same');
  const total = eigenvalues.reduce((sum, value) => sum + value, 0);
  return { means, eigenvalues, explained: eigenvalues.map((value) => value / total), loadings };
}

/**
 * Eigenvalues and unit eigenvectors of a covariance (p × p), largest first, those no larger than `rounding` or than
 * 10⁻¹² of the largest left out; the largest absolute number of each vector is positive.
 *
 * @example
 * principalAxes([[2, 1], [1, 2]]).eigenvalues // [3, 1]
 * principalAxes([[1, 1], [1, 1]]).loadings // [[0.7071068, 0.7071068]]
 */
export function principalAxes(
  covariance: readonly (readonly number[])[],
  rounding = 0,
): { eigenvalues: number[]; loadings: number[][] } {
  const found = new PCA(covariance as number[][], { isCovarianceMatrix: true });
  const all = found.getEigenvalues();
  const eigenvalues = all.filter((value) => value > Math.max(NULL_SHARE * all[0]!, rounding));
  const vectors = found.getEigenvectors();
  return { eigenvalues, loadings: eigenvalues.map((_, k) => oriented(vectors.getColumn(k))) };
}

/**
 * Scores of one row on given directions: (row − means)·direction, one number per direction.
 *
 * @example
 * project([3, 5], { means: [1, 1], loadings: [[0.6, 0.8], [0.8, -0.6]] }) // [4.4, -0.8]
 */
export function project(row: ArrayLike<number>, at: Projection): number[] {
  return at.loadings.map((direction) => {
    let sum = 0;
    for (let j = 0; j < direction.length; j++) sum += (row[j]! - at.means[j]!) * direction[j]!;
    return sum;
  });
}
