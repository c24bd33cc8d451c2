/** Where a cost is least, and how far one may go either side before it has risen by some amount. */
export interface Profile {
  readonly best: number;
  readonly least: number;
  /** Null: the cost has not risen that much by the end of the range. */
  readonly low: number | null;
  readonly high: number | null;
}
export interface ProfileOptions {
  readonly from: number;
  readonly to: number;
  /** How much above the least cost an interval ends, given the least cost. */
  readonly rise: (least: number) => number;
}

const STEPS = 60;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The least of a cost over a range (a grid of 60 steps, then golden section), and the interval over which it stays
 * within `rise` of the least (bisection, nearest crossing on either side). Deterministic; never throws by itself.
 * @example
 * profile((x) => (x - 0.3) ** 2 / 0.01, { from: 0, to: 1, rise: () => 4 }) // { best: 0.3, low: 0.1, high: 0.5 }
 */
export function profile(cost: (x: number) => number, options: ProfileOptions): Profile {
  const { from, to, rise } = options;
  const step = (to - from) / STEPS;
  const grid = Array.from({ length: STEPS + 1 }, (_, i) => from + i * step);
  const start = grid.reduce((a, b) => (cost(b) < cost(a) ? b : a));
  const best = goldenSection(cost, Math.max(from, start - step), Math.min(to, start + step));
  const least = cost(best);
  const ceiling = least + rise(least);
  const crossing = (direction: 1 | -1) => {
    let inside = best;
    for (let i = 1; i <= 4 * STEPS; i++) {
      const next = best + (direction * i * step) / 4;
      if (next < from || next > to) return null;
      if (cost(next) > ceiling) return bisect((x) => cost(x) > ceiling, inside, next);
      inside = next;
    }
    return null;
  };
  return { best, least, low: crossing(-1), high: crossing(1) };
}

/**
 * The least of a one-humped cost between two points, by golden section to about 1e-9 of the span.
 * @example
 * goldenSection((x) => (x - 2) ** 2, 0, 5) // 2
 */
export function goldenSection(cost: (x: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  let [c, d] = [b - GOLDEN * (b - a), a + GOLDEN * (b - a)];
  let [fc, fd] = [cost(c), cost(d)];
  for (let i = 0; i < 44; i++) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - GOLDEN * (b - a);
      fc = cost(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + GOLDEN * (b - a);
      fd = cost(d);
    }
  }
  return (a + b) / 2;
}

/**
 * Where a condition turns from false (at `no`) to true (at `yes`), by halving 50 times.
 * @example
 * bisect((x) => x > 0.7, 0, 1) // 0.7
 */
export function bisect(holds: (x: number) => boolean, no: number, yes: number): number {
  let [a, b] = [no, yes];
  for (let i = 0; i < 50; i++) {
    const middle = (a + b) / 2;
    if (holds(middle)) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}
