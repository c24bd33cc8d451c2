import { RequirementError } from '../requirement.ts';
import { principalAxes } from '../statistics/pca.ts';
import type { Pca } from './types.ts';

type Row = readonly number[];

/** All references of a model in brief: how many, their mean and covariance (divisor n − 1) in the working scale. */
export interface References {
  readonly n: number;
  readonly mean: Row;
  readonly covariance: readonly Row[];
}

/**
 * The references of a model in brief, from their principal components: the covariance is Σ λ·v·vᵀ.
 *
 * @example
 * referencesOf({ eigenvalues: [2], loadings: [[0.6, 0.8]] }, { n: 5, mean: [1, 1] }).covariance // [[0.72, 0.96], [0.96, 1.28]]
 */
export function referencesOf(
  { eigenvalues, loadings }: Pick<Pca, 'eigenvalues' | 'loadings'>,
  { n, mean }: { readonly n: number; readonly mean: Row },
): References {
  const covariance = mean.map((_, i) =>
    mean.map((_, j) =>
      eigenvalues.reduce((sum, value, k) => sum + value * loadings[k]![i]! * loadings[k]![j]!, 0),
    ),
  );
  return { n, mean, covariance };
}

/** The scatter of the references with `weight` times the outer product of one row's deviation added. */
function axesAfter({ mean, covariance, n }: References, row: Row, weight: number): number[][] {
  const gap = row.map((v, j) => v - mean[j]!);
  const scatter = covariance.map((line, i) => line.map((v, j) => (n - 1) * v + weight * gap[i]! * gap[j]!));
  return principalAxes(scatter).loadings;
}

/**
 * The first `count` principal components of the references without one of them, or null where the others do not
 * spread in so many directions. Closed form for the scatter (S − n/(n−1)·ddᵀ, d the row's deviation from the mean), so
 * that no row but this is read. Standardised coordinates keep the deviations they were divided by. Throws with fewer
 * than three references.
 *
 * @example
 * const references = referencesOf({ eigenvalues: [2, 1], loadings: [[1, 0], [0, 1]] }, { n: 3, mean: [0, 0] });
 * axesWithout(references, [Math.sqrt(8 / 3), 0], 1) // [[0, 1]]
 * axesWithout(references, [Math.sqrt(8 / 3), 0], 2) // null
 * axesWithout({ ...references, n: 2 }, [1, 0], 1) // throws need at least three
 */
export function axesWithout(references: References, row: Row, count: number): number[][] | null {
  const { n } = references;
  if (n < 3) throw new RequirementError(`components without one reference need at least three; found ${n}`);
  const axes = axesAfter(references, row, -n / (n - 1));
  return axes.length < count ? null : axes.slice(0, count);
}

/**
 * The first `count` principal components of the references and one sample more (S + n/(n+1)·ddᵀ).
 *
 * @example
 * const references = referencesOf({ eigenvalues: [2, 1], loadings: [[1, 0], [0, 1]] }, { n: 3, mean: [0, 0] });
 * axesWith(references, [0, 9], 1) // [[0, 1]]
 */
export function axesWith(references: References, row: Row, count: number): number[][] {
  return axesAfter(references, row, references.n / (references.n + 1)).slice(0, count);
}
