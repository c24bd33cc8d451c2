import type { LogFlagKind } from './types.ts';

/** What became of one row's time. */
export interface ClockTick {
  /** Seconds since the start, never falling; null where the row is left out. */
  readonly seconds: number | null;
  readonly flag: LogFlagKind | null;
  /** Nothing is known of the stretch before this row. */
  readonly gap: boolean;
  /** Size of the jump, seconds, for the message. */
  readonly jump: number;
}

const HALF_HOUR = 1800;
/** Clock changes are whole half hours, up to this many. */
const MOST_HALF_HOURS = 8;
/** A gap is longer than this many usual steps, and than this many seconds. */
const GAP_STEPS = 5;
const GAP_SECONDS = 30;
/** So many rows running backwards in a row are a clock that was set back, not rows out of order. */
const SET_BACK = 3;

/**
 * Turns the times of rows into seconds that never fall: a clock set back (summer time, or by hand) goes on from where
 * it was; a log that starts again is set after the one before; single rows out of order are left out.
 */
export class LogClock {
  readonly #interval: number;
  #first: number | null = null;
  #raw = 0;
  #shift = 0;
  #behind: number[] = [];

  constructor(interval: number) {
    this.#interval = interval;
  }

  tick(raw: number): ClockTick {
    if (this.#first === null) {
      [this.#first, this.#raw] = [raw, raw];
      return this.#go(null);
    }
    const step = raw - this.#raw;
    if (step < 0) return this.#backwards(raw, -step);
    this.#raw = raw;
    this.#behind = [];
    if (step === 0) return this.#go('duplicate-time');
    if (step <= Math.max(GAP_STEPS * this.#interval, GAP_SECONDS)) return this.#go(null);
    const late = Math.abs(step - this.#interval - 2 * HALF_HOUR) <= this.#interval / 2 + 2;
    return { ...this.#go(late ? 'clock-forward' : 'gap'), gap: true, jump: step };
  }

  #go(flag: LogFlagKind | null): ClockTick {
    return { seconds: this.#raw + this.#shift - this.#first!, flag, gap: false, jump: 0 };
  }

  #backwards(raw: number, back: number): ClockTick {
    const restart = raw <= this.#first! + this.#interval && back > GAP_STEPS * this.#interval;
    const halfHours = Math.round((back + this.#interval) / HALF_HOUR);
    const whole =
      halfHours >= 1 &&
      halfHours <= MOST_HALF_HOURS &&
      Math.abs(back + this.#interval - halfHours * HALF_HOUR) <= this.#interval / 2 + 2;
    this.#behind = this.#behind.length > 0 && raw > this.#behind.at(-1)! ? [...this.#behind, raw] : [raw];
    if (!restart && !whole && this.#behind.length < SET_BACK)
      return { seconds: null, flag: 'out-of-order', gap: false, jump: back };
    this.#behind = [];
    this.#shift += this.#raw - raw + this.#interval;
    this.#raw = raw;
    return { ...this.#go(restart ? 'restart' : 'clock-back'), gap: restart, jump: back };
  }
}
