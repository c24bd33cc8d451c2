import { thermocoupleTolerance } from './thermocouple.ts';
import type { Bounded, Sensor, TimeByTemperature } from './types.ts';

/** Readings lie between −100 and 2,000 °C and a stated error is at most 100 °C. */
const COLDEST = -300;
const BINS = 2700;
/** A hold at a whole degree stays in it, though °F turned into °C may end a hair below. */
const HAIR = 1e-9;

/**
 * Time spent at or above a temperature, seconds, from the time spent in each degree: exact at whole degrees, on a
 * straight line inside one. Low and high as `TimeProfile` counted them.
 *
 * @example
 * timeAbove({ from: 799, value: [30, 60, 10], low: [90, 10, 0], high: [0, 40, 60] }, 800) // { value: 70, low: 10, high: 100 }
 * timeAbove({ from: 799, value: [30], low: [30], high: [30] }, 799.5).value // 15
 */
export function timeAbove({ from, value, low, high }: TimeByTemperature, threshold: number): Bounded {
  const at = threshold - from;
  const whole = Math.ceil(at);
  const above = (seconds: readonly number[]) => {
    const sum = seconds.slice(Math.max(0, whole)).reduce((total, s) => total + s, 0);
    return sum + (whole - at) * (seconds[whole - 1] ?? 0);
  };
  return { value: above(value), low: above(low), high: above(high) };
}

/**
 * Adds up the time spent in each degree, reading by reading, on straight lines between them, so that time above any
 * temperature can be told later. Low: even if the sensor reads high by its tolerance; high: the other way round. Over
 * a gap nothing is known: it counts for the value on its straight line, never for the low, and whole for the high up
 * to the hotter of its ends.
 */
export class TimeProfile {
  readonly #sensor: Sensor;
  readonly #value = new Float64Array(BINS);
  readonly #low = new Float64Array(BINS);
  readonly #high = new Float64Array(BINS);

  constructor(sensor: Sensor) {
    this.#sensor = sensor;
  }

  add(from: number, to: number, { seconds, gap }: { seconds: number; gap: boolean }): void {
    if (seconds <= 0) return;
    const offFrom = thermocoupleTolerance(from, this.#sensor);
    const offTo = thermocoupleTolerance(to, this.#sensor);
    spread(this.#value, { from, to, seconds });
    const [highFrom, highTo] = [from + offFrom, to + offTo];
    if (gap) {
      const top = Math.max(highFrom, highTo);
      spread(this.#high, { from: top, to: top, seconds });
    } else {
      spread(this.#low, { from: from - offFrom, to: to - offTo, seconds });
      spread(this.#high, { from: highFrom, to: highTo, seconds });
    }
  }

  /** From the coldest degree to the hottest that anything was counted in. */
  result(): TimeByTemperature {
    const used = [this.#value, this.#low, this.#high].flatMap((bins) => {
      const [first, last] = [bins.findIndex((s) => s > 0), bins.findLastIndex((s) => s > 0)];
      return first < 0 ? [] : [first, last];
    });
    if (used.length === 0) return { from: 0, value: [], low: [], high: [] };
    const [first, last] = [Math.min(...used), Math.max(...used)];
    const kept = (bins: Float64Array) => Array.from(bins.subarray(first, last + 1), tidy);
    return {
      from: COLDEST + first,
      value: kept(this.#value),
      low: kept(this.#low),
      high: kept(this.#high),
    };
  }
}

const tidy = (seconds: number) => Math.round(seconds * 1e6) / 1e6;

/** Shares the seconds of a straight line among the degrees that it crosses. */
function spread(bins: Float64Array, line: { from: number; to: number; seconds: number }): void {
  const cold = Math.min(line.from, line.to) - COLDEST;
  const hot = Math.max(line.from, line.to) - COLDEST;
  const first = Math.floor(cold + HAIR);
  if (hot <= first + 1) {
    bins[first]! += line.seconds;
    return;
  }
  const perDegree = line.seconds / (hot - cold);
  for (let bin = first; bin < hot; bin++)
    bins[bin]! += perDegree * (Math.min(hot, bin + 1) - Math.max(cold, bin));
}
