import type { CurvePoint } from './types.ts';

interface Bucket {
  readonly at: number;
  low: CurvePoint;
  high: CurvePoint;
}

/**
 * Keeps a curve of any length in about `points` points: the lowest and the highest reading of equal stretches of
 * time, which double when there are too many, so that no peak is ever lost. Times must not fall.
 */
export class CurveBuckets {
  readonly #most: number;
  #width: number;
  #buckets: Bucket[] = [];
  #first: CurvePoint | null = null;
  #last: CurvePoint | null = null;

  constructor(points: number, width: number) {
    this.#most = Math.max(4, Math.floor(points / 2));
    this.#width = width > 0 ? width : 1;
  }

  get first(): CurvePoint | null {
    return this.#first;
  }

  get last(): CurvePoint | null {
    return this.#last;
  }

  add(seconds: number, celsius: number): void {
    const at = Math.floor(seconds / this.#width);
    const bucket = this.#buckets.at(-1);
    if (bucket?.at === at) {
      if (celsius < bucket.low.celsius) bucket.low = { seconds, celsius };
      if (celsius > bucket.high.celsius) bucket.high = { seconds, celsius };
    } else {
      const point = { seconds, celsius };
      this.#buckets.push({ at, low: point, high: point });
      if (this.#buckets.length > this.#most) this.#halve();
    }
    this.#first ??= { seconds, celsius };
    this.#last = { seconds, celsius };
  }

  #halve(): void {
    this.#width *= 2;
    const merged: Bucket[] = [];
    for (const { low, high, at } of this.#buckets) {
      const wide = Math.floor(at / 2);
      const before = merged.at(-1);
      if (before?.at !== wide) {
        merged.push({ at: wide, low, high });
        continue;
      }
      if (low.celsius < before.low.celsius) before.low = low;
      if (high.celsius > before.high.celsius) before.high = high;
    }
    this.#buckets = merged;
  }

  /** In order of time, each point once; first and last among them. */
  points(): CurvePoint[] {
    const inside = this.#buckets.flatMap(({ low, high }) =>
      low.seconds === high.seconds ? [low] : low.seconds < high.seconds ? [low, high] : [high, low],
    );
    const ends = [this.#first, this.#last].filter((p) => p !== null);
    const known = new Set(inside.map((p) => p.seconds));
    return [...inside, ...ends.filter((p) => !known.has(p.seconds))]
      .sort((a, b) => a.seconds - b.seconds)
      .filter(
        (p, i, all) => i === 0 || p.seconds !== all[i - 1]!.seconds || p.celsius !== all[i - 1]!.celsius,
      );
  }
}
