/** Numbers as whole steps from their least. */
export interface Grid {
  readonly steps: readonly number[];
  /** Size of one step. */
  readonly size: number;
  /** False where the numbers had to be rounded to the nearest step. */
  readonly exact: boolean;
}

const SAME = 1e-9;

/** Greatest common step of two lengths, to rounding. */
function commonStep(a: number, b: number, least: number): number {
  let [long, short] = a > b ? [a, b] : [b, a];
  while (short > least) [long, short] = [short, long - short * Math.floor(long / short + SAME)];
  return long;
}

/**
 * Puts numbers on a grid: their greatest common step where that needs no more than `most` steps, else the nearest of
 * `most` equal steps over their range. All alike: every step 0, size 1.
 *
 * @example
 * toGrid([20, 30, 45], 100) // { steps: [0, 2, 5], size: 5, exact: true }
 * toGrid([0, 1, Math.PI], 100) // { steps: [0, 32, 100], size: 0.0314159, exact: false }
 */
export function toGrid(values: readonly number[], most: number): Grid {
  const low = Math.min(...values);
  const range = Math.max(...values) - low;
  if (range === 0) return { steps: values.map(() => 0), size: 1, exact: true };
  const least = range * 1e-7;
  const gaps = values.map((v) => v - low).filter((gap) => gap > least);
  const common = gaps.reduce((step, gap) => commonStep(step, gap, least), range);
  const exact = range / common <= most + SAME;
  const size = exact ? common : range / most;
  return { steps: values.map((v) => Math.round((v - low) / size)), size, exact };
}
