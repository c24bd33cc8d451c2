import { covariance } from '../statistics/covariance.ts';
import { columnMeans } from '../statistics/moments.ts';
import type { Interval, PlacementUncertainty } from './types.ts';

/**
 * Median and middle 95 % of some draws (linear interpolation between order statistics). Sorts the numbers in place.
 * @example
 * intervalOf(Float64Array.from({ length: 101 }, (_, i) => i)) // { low: 2.5, median: 50, high: 97.5 }
 */
export function intervalOf(draws: Float64Array): Interval {
  draws.sort();
  const at = (q: number) => {
    const place = (draws.length - 1) * q;
    const low = Math.floor(place);
    const above = draws[Math.min(low + 1, draws.length - 1)]!;
    return draws[low]! + (place - low) * (above - draws[low]!);
  };
  return { low: at(0.025), median: at(0.5), high: at(0.975) };
}

/**
 * An interval seen through a falling function: its ends change places.
 * @example
 * throughFalling({ low: 1, median: 2, high: 4 }, (x) => 1 / x) // { low: 0.25, median: 0.5, high: 1 }
 */
export function throughFalling({ low, median, high }: Interval, fall: (x: number) => number): Interval {
  return { low: fall(high), median: fall(median), high: fall(low) };
}

/**
 * Mean and covariance (divisor draws − 1) of a cloud of scores, and some of its points, evenly picked.
 * @example
 * cloudOf([[0, 0], [2, 0], [0, 2], [2, 2]], 2).mean // [1, 1]
 * cloudOf([[0, 0], [2, 0], [0, 2], [2, 2]], 2).some.length // 2
 */
export function cloudOf(
  scores: readonly (readonly number[])[],
  shown: number,
): PlacementUncertainty['scores'] {
  const step = Math.max(1, scores.length / shown);
  const some = Array.from(
    { length: Math.min(shown, scores.length) },
    (_, i) => scores[Math.floor(i * step)]!,
  );
  return { mean: columnMeans(scores), covariance: covariance(scores), some };
}
