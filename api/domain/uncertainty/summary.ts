import { mean } from '../statistics/moments.ts';
import { selectPlace } from './order-statistics.ts';
import type { Interval, PlacementUncertainty } from './types.ts';

/**
 * Median and middle 95 % of some draws (linear interpolation between order statistics), each seen through a rising
 * function where one is given. Reorders the numbers in place.
 * @example
 * intervalOf(Float64Array.from({ length: 101 }, (_, i) => i)) // { low: 2.5, median: 50, high: 97.5 }
 * intervalOf(Float64Array.from({ length: 101 }, (_, i) => i * i), Math.sqrt).high // 97.5
 */
export function intervalOf(draws: Float64Array, rising: (x: number) => number = (x) => x): Interval {
  let from = 0;
  const at = (q: number) => {
    const place = (draws.length - 1) * q;
    const low = Math.floor(place);
    const below = rising(selectPlace(draws, low, from));
    from = Math.min(low + 1, draws.length - 1);
    return below + (place - low) * (rising(selectPlace(draws, from, Math.min(low, from))) - below);
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
 * Mean and covariance (divisor draws − 1) of a cloud of scores, and `shown` of its points, evenly picked. Scores lie
 * component by component: draw i of component k at [k·draws + i].
 * @example
 * square = Float64Array.of(0, 2, 0, 2, 0, 0, 2, 2)
 * cloudOf(square, { draws: 4, shown: 2 }).mean // [1, 1]
 * cloudOf(square, { draws: 4, shown: 2 }).covariance // [[1.333333, 0], [0, 1.333333]]
 * cloudOf(square, { draws: 4, shown: 2 }).some // [[0, 0], [0, 2]]
 */
export function cloudOf(
  scores: Float64Array,
  { draws, shown }: { readonly draws: number; readonly shown: number },
): PlacementUncertainty['scores'] {
  const columns = Array.from({ length: scores.length / draws }, (_, k) =>
    scores.subarray(k * draws, (k + 1) * draws),
  );
  const centre = columns.map(mean);
  const product = (a: number, b: number) => {
    let sum = 0;
    const [x, y, mx, my] = [columns[a]!, columns[b]!, centre[a]!, centre[b]!];
    for (let i = 0; i < draws; i++) sum += (x[i]! - mx) * (y[i]! - my);
    return sum / (draws - 1);
  };
  const count = Math.min(shown, draws);
  return {
    mean: centre,
    covariance: columns.map((_, a) => columns.map((_, b) => product(Math.min(a, b), Math.max(a, b)))),
    some: Array.from({ length: count }, (_, i) => columns.map((c) => c[Math.floor((i * draws) / count)]!)),
  };
}
