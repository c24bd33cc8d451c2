import type { Amount } from './types.ts';

/** The mean of one oxide over spots, and what a reader should know about it. */
export interface SpotMean {
  readonly amount: Amount;
  readonly notes: string[];
}

/**
 * Mean of one oxide over spots on a common scale; see `averageSpots` for how spots below detection and σ are treated.
 * Takes at least one amount.
 * @example
 * of = (value, limit) => ({ value, limit, sigma: null, sigmaBasis: null, resolution: null })
 * averageAmount([of(0.3, 0.1), of(null, 0.1)], 0.65).amount.value // 0.1825
 * averageAmount([of(null, 0.1), of(null, 0.3)], 0.65).amount // { value: null, limit: 0.2 }
 */
export function averageAmount(spots: readonly Amount[], fraction: number): SpotMean {
  const undetected = spots.filter(({ value }) => value === null);
  const limit = meanOf(spots.map((spot) => spot.limit));
  if (undetected.length === spots.length) {
    const amount = { value: null, limit, sigma: null, sigmaBasis: null, resolution: null };
    return { amount, notes: [] };
  }
  const notes: string[] = [];
  const used = spots.filter((spot) => spot.value !== null || spot.limit !== null);
  const values = used.map((spot) => spot.value ?? fraction * spot.limit!);
  const lost = spots.length - used.length;
  if (undetected.length > lost)
    notes.push(
      `below detection in ${undetected.length - lost} of ${spots.length} spots, counted there as ${fraction} of the limit`,
    );
  if (lost > 0)
    notes.push(
      `below an unknown limit in ${lost} of ${spots.length} spots, left out of the mean, which is therefore too high`,
    );
  const value = values.reduce((sum, x) => sum + x, 0) / values.length;
  const detected = spots.filter((spot) => spot.value !== null);
  return {
    amount: { value, limit, ...spreadOf(values, detected), resolution: leftInMean(detected, 'resolution') },
    notes,
  };
}

function spreadOf(
  values: readonly number[],
  detected: readonly Amount[],
): Pick<Amount, 'sigma' | 'sigmaBasis' | 'sigmaDf'> {
  const stated = leftInMean(detected, 'sigma');
  const assumed = detected.some(({ sigmaBasis }) => sigmaBasis === 'assumed');
  const error = errorOfMean(values);
  if (error !== null && error > 0 && error >= (stated ?? 0))
    return { sigma: error, sigmaBasis: 'spots', sigmaDf: values.length - 1 };
  return { sigma: stated, sigmaBasis: stated === null ? null : assumed ? 'assumed' : 'stated' };
}

/** What independent errors of the spots leave in their mean: √Σσ²/n; null when one of them is unknown. */
function leftInMean(spots: readonly Amount[], figure: 'sigma' | 'resolution'): number | null {
  const figures = spots.map((spot) => spot[figure]);
  return figures.includes(null) ? null : Math.hypot(...(figures as number[])) / figures.length;
}

/** The standard deviation over spots (divisor n − 1) over √n. */
function errorOfMean(values: readonly number[]): number | null {
  const n = values.length;
  if (n < 2) return null;
  const mean = values.reduce((sum, x) => sum + x, 0) / n;
  return Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1) / n);
}

/** Mean of the figures known; null when none is. */
function meanOf(figures: readonly (number | null)[]): number | null {
  const known = figures.filter((figure) => figure !== null);
  return known.length === 0 ? null : known.reduce((sum, x) => sum + x, 0) / known.length;
}
