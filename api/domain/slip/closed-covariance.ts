import { weighable } from './measurement.ts';
import type { Analysed } from './types.ts';

/**
 * Covariance (wt%²) of some oxides of a closed analysis, when the errors were independent before closure:
 * J·diag(σ²)·Jᵀ with J = I − c·1ᵀ/T, c the closed amounts and T their sum. Closure ties every oxide to lead's error.
 * A σ found from a scatter (of spots, or of slips: with degrees of freedom) is that of closed amounts already, and
 * adds to the diagonal as it stands: closing it again would make it too small.
 * Throws when an oxide of the analysis has no uncertainty.
 * @example
 * amount = (value, sigma, sigmaDf = null) => ({ value, limit: null, sigma, sigmaBasis: 'stated', sigmaDf, resolution: null })
 * two = { label: 'T1', spots: 1, amounts: { PbO: amount(60, 1), SiO2: amount(40, 1) } }
 * closedCovariance(two, ['PbO', 'SiO2']) // [[0.52, -0.52], [-0.52, 0.52]]
 * closedCovariance({ ...two, amounts: { PbO: amount(60, 1, 2), SiO2: amount(40, 1, 2) } }, ['PbO', 'SiO2']) // [[1, 0], [0, 1]]
 */
export function closedCovariance(analysed: Analysed, oxides: readonly string[]): number[][] {
  const unclosed = (oxide: string) => {
    const { value, variance, df } = weighable(analysed, oxide);
    return df === null ? { value, variance, scatter: 0 } : { value, variance: 0, scatter: variance };
  };
  const all = Object.keys(analysed.amounts).map(unclosed);
  const total = all.reduce((sum, m) => sum + m.value, 0);
  const variance = all.reduce((sum, m) => sum + m.variance, 0);
  const chosen = oxides.map(unclosed);
  return chosen.map((a, i) =>
    chosen.map((b, j) => {
      const own = i === j ? a.variance + a.scatter : 0;
      const shared = (a.value * b.variance + b.value * a.variance) / total;
      return own - shared + (a.value * b.value * variance) / total ** 2;
    }),
  );
}
