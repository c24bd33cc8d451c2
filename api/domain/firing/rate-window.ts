import { thermocoupleTolerance } from './thermocouple.ts';
import type { Rate, Sensor } from './types.ts';

const HOUR = 3600;

/**
 * A rate in °C per hour between two readings, with bounds from the tolerance at both and a step of the last digit
 * (half a step each): the sensor may read high at one end and low at the other.
 *
 * @example
 * rateBetween({ seconds: 0, celsius: 100 }, { seconds: 3600, celsius: 300 }, { sensor: { kind: 'class', type: 'K', class: 2 }, resolution: 1 }) // { perHour: { value: 200, low: 194, high: 206 }, from: 0, to: 3600 }
 */
export function rateBetween(
  from: { readonly seconds: number; readonly celsius: number },
  to: { readonly seconds: number; readonly celsius: number },
  { sensor, resolution }: { sensor: Sensor; resolution: number },
): Rate {
  const hours = (to.seconds - from.seconds) / HOUR;
  const value = (to.celsius - from.celsius) / hours;
  const off =
    (thermocoupleTolerance(from.celsius, sensor) + thermocoupleTolerance(to.celsius, sensor) + resolution) /
    hours;
  return {
    perHour: { value, low: value - off, high: value + off },
    from: from.seconds,
    to: to.seconds,
  };
}

interface Ends {
  readonly from: { readonly seconds: number; readonly celsius: number };
  readonly to: { readonly seconds: number; readonly celsius: number };
}

/** The steepest rise and fall over any stretch of a given length, from readings as they come. */
export class RateWindow {
  readonly #length: number;
  #times: number[] = [];
  #values: number[] = [];
  #start = 0;
  #rise: Ends | null = null;
  #fall: Ends | null = null;

  constructor(length: number) {
    this.#length = length;
  }

  get rise(): Ends | null {
    return this.#rise;
  }

  get fall(): Ends | null {
    return this.#fall;
  }

  /** Forgets what came before: a gap, over which nothing is known. */
  reset(): void {
    this.#times = [];
    this.#values = [];
    this.#start = 0;
  }

  add(seconds: number, celsius: number): void {
    this.#times.push(seconds);
    this.#values.push(celsius);
    const began = seconds - this.#length;
    if (this.#times[this.#start]! > began) return;
    while (this.#times[this.#start + 1]! <= began) this.#start++;
    this.#judge(this.#at(began), { seconds, celsius });
    if (this.#start > 4096) this.#trim();
  }

  /** The reading at a time between two kept ones. */
  #at(seconds: number): { seconds: number; celsius: number } {
    const i = this.#start;
    const [t, u] = [this.#times[i]!, this.#times[i + 1]!];
    const [a, b] = [this.#values[i]!, this.#values[i + 1]!];
    return { seconds, celsius: u > t ? a + ((b - a) * (seconds - t)) / (u - t) : a };
  }

  #judge(from: Ends['from'], to: Ends['to']): void {
    const step = to.celsius - from.celsius;
    if (step > 0 && (!this.#rise || step > this.#rise.to.celsius - this.#rise.from.celsius))
      this.#rise = { from, to };
    if (step < 0 && (!this.#fall || step < this.#fall.to.celsius - this.#fall.from.celsius))
      this.#fall = { from, to };
  }

  #trim(): void {
    this.#times = this.#times.slice(this.#start);
    this.#values = this.#values.slice(this.#start);
    this.#start = 0;
  }
}
