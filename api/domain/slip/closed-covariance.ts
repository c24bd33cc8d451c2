import { weighable } from './measurement.ts';
import type { Analysed } from './types.ts';

/**
 * Covariance (wt%²) of some oxides of a closed analysis, when the errors were independent before closure:
 * J·diag(σ²)·Jᵀ with J = I − c·1ᵀ/T, c the closed amounts and T their sum. Closure ties every oxide to lead's error.
 * Throws when an oxide of the analysis has no uncertainty.
 * @example
 * amount = (value, sigma) => ({ value, limit: null, sigma, sigmaBasis: 'stated', resolution: null })
 * two = { label: 'T1', spots: 1, amounts: { PbO: amount(60, 1), SiO2: amount(40, 1) } }
 * closedCovariance(two, ['PbO', 'SiO2']) // [[0.52, -0.52], [-0.52, 0.52]]
 */
export function closedCovariance(analysed: Analysed, oxides: readonly string[]): number[][] {
  const all = Object.keys(analysed.amounts).map((oxide) => weighable(analysed, oxide));
  const total = all.reduce((sum, m) => sum + m.value, 0);
  const variance = all.reduce((sum, m) => sum + m.variance, 0);
  const chosen = oxides.map((oxide) => weighable(analysed, oxide));
  return chosen.map((a, i) =>
    chosen.map((b, j) => {
      const own = i === j ? a.variance : 0;
      const shared = (a.value * b.variance + b.value * a.variance) / total;
      return own - shared + (a.value * b.value * variance) / total ** 2;
    }),
  );
}
