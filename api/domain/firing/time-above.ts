import { thermocoupleTolerance } from './thermocouple.ts';
import type { Sensor, TimeAbove } from './types.ts';

/**
 * The share of a straight line from a to b that lies at or above a threshold.
 *
 * @example
 * shareAbove(700, 900, 800) // 0.5
 * shareAbove(700, 750, 800) // 0
 */
export function shareAbove(a: number, b: number, threshold: number): number {
  if (a >= threshold && b >= threshold) return 1;
  if (a < threshold && b < threshold) return 0;
  const share = Math.abs((Math.max(a, b) - threshold) / (b - a));
  return Math.min(1, share);
}

/**
 * Adds up time above thresholds, reading by reading, on straight lines between them. Low: even if the sensor reads
 * high by its tolerance; high: the other way round. Over a gap nothing is known: it counts for the value on its
 * straight line, never for the low, and whole for the high where one of its ends could be above.
 */
export class TimeAboveSum {
  readonly #thresholds: readonly number[];
  readonly #sensor: Sensor;
  readonly #sums: { value: number; low: number; high: number }[];

  constructor(thresholds: readonly number[], sensor: Sensor) {
    this.#thresholds = thresholds;
    this.#sensor = sensor;
    this.#sums = thresholds.map(() => ({ value: 0, low: 0, high: 0 }));
  }

  add(from: number, to: number, { seconds, gap }: { seconds: number; gap: boolean }): void {
    const [offFrom, offTo] = [from, to].map((t) => thermocoupleTolerance(t, this.#sensor)) as [
      number,
      number,
    ];
    this.#thresholds.forEach((threshold, k) => {
      const sum = this.#sums[k]!;
      const most = shareAbove(from + offFrom, to + offTo, threshold);
      sum.value += seconds * shareAbove(from, to, threshold);
      sum.low += gap ? 0 : seconds * shareAbove(from - offFrom, to - offTo, threshold);
      sum.high += seconds * (gap && most > 0 ? 1 : most);
    });
  }

  result(): TimeAbove[] {
    return this.#thresholds.map((threshold, k) => ({ threshold, seconds: { ...this.#sums[k]! } }));
  }
}
