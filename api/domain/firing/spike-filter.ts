import type { CurvePoint } from './types.ts';

/** A jump counts as suspicious from this many °C on, and more for readings far apart in time. */
const JUMP = 60;
const PER_SECOND = 2;
const MOST = 300;
/** A spike comes back to where it left within this many readings. */
const LONGEST = 3;

const limit = (seconds: number) => Math.min(MOST, JUMP + PER_SECOND * seconds);

/**
 * Tells spikes (a jump away and back within three readings, as from a loose contact) from true changes: readings go
 * in as they come, and come out, late by a few where in doubt, as kept or as spikes.
 */
export class SpikeFilter {
  #good: CurvePoint | null = null;
  #waiting: CurvePoint[] = [];

  add(point: CurvePoint): { kept: CurvePoint[]; spikes: CurvePoint[] } {
    const { seconds, celsius } = point;
    if (this.#good === null) return this.#keep([point]);
    const off = Math.abs(celsius - this.#good.celsius);
    const allowed = limit(seconds - this.#good.seconds);
    if (this.#waiting.length === 0) {
      if (off <= allowed) return this.#keep([point]);
      this.#waiting = [point];
      return { kept: [], spikes: [] };
    }
    if (off <= allowed / 2) {
      const spikes = this.#waiting;
      this.#waiting = [];
      return { kept: this.#keep([point]).kept, spikes };
    }
    const waiting = [...this.#waiting, point];
    if (waiting.length <= LONGEST) {
      this.#waiting = waiting;
      return { kept: [], spikes: [] };
    }
    this.#waiting = [];
    return this.#keep(waiting);
  }

  /** What still waits at the end: kept, but for a single last reading, which nothing followed. */
  end(): { kept: CurvePoint[]; spikes: CurvePoint[] } {
    const waiting = this.#waiting;
    this.#waiting = [];
    return waiting.length === 1 ? { kept: [], spikes: waiting } : { kept: waiting, spikes: [] };
  }

  #keep(points: readonly CurvePoint[]): { kept: CurvePoint[]; spikes: CurvePoint[] } {
    this.#good = points.at(-1)!;
    return { kept: [...points], spikes: [] };
  }
}
