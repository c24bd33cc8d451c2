import { RequirementError } from '../requirement.ts';

/**
 * Which points of a curve to keep for a plot: the first, the last, the highest, the lowest, and of each stretch
 * between the point that makes the largest triangle with its neighbours (Steinarsson 2013, *Downsampling Time Series
 * for Visual Representation*). Indices in order, `points` of them or two more for the extremes. Throws when the two
 * columns differ in length, or fewer than three points are asked for.
 *
 * @example
 * thinLargestTriangle([0, 1, 2, 3, 4, 5], [0, 1, 9, 1, 0, 0], 3) // [0, 2, 5]
 * thinLargestTriangle([0, 1], [0], 3) // throws a curve needs as many times as temperatures; found 2 and 1
 */
export function thinLargestTriangle(
  seconds: ArrayLike<number>,
  celsius: ArrayLike<number>,
  points: number,
): number[] {
  const n = seconds.length;
  if (n !== celsius.length)
    throw new RequirementError(
      `a curve needs as many times as temperatures; found ${n} and ${celsius.length}`,
    );
  if (!(points >= 3)) throw new RequirementError(`a thinned curve needs 3 points or more; found ${points}`);
  if (n <= points) return Array.from({ length: n }, (_, i) => i);
  const kept = [0];
  const edge = (k: number) => 1 + Math.floor((k * (n - 2)) / (points - 2));
  for (let k = 0; k < points - 2; k++) {
    const next = middleOf(seconds, celsius, edge(k + 1), k + 2 < points - 1 ? edge(k + 2) : n);
    kept.push(largest(seconds, celsius, { last: kept.at(-1)!, from: edge(k), to: edge(k + 1), next }));
  }
  return [...new Set([...kept, n - 1, ...extremes(celsius)])].sort((a, b) => a - b);
}

function middleOf(x: ArrayLike<number>, y: ArrayLike<number>, from: number, to: number): [number, number] {
  const end = Math.max(to, from + 1);
  let [sx, sy] = [0, 0];
  for (let i = from; i < end; i++) {
    sx += x[i]!;
    sy += y[i]!;
  }
  return [sx / (end - from), sy / (end - from)];
}

interface Stretch {
  readonly last: number;
  readonly from: number;
  readonly to: number;
  readonly next: readonly [number, number];
}

function largest(x: ArrayLike<number>, y: ArrayLike<number>, { last, from, to, next }: Stretch): number {
  let best = { at: from, area: -1 };
  for (let i = from; i < to; i++) {
    const area = Math.abs(
      (x[last]! - next[0]) * (y[i]! - y[last]!) - (x[last]! - x[i]!) * (next[1] - y[last]!),
    );
    if (area > best.area) best = { at: i, area };
  }
  return best.at;
}

function extremes(y: ArrayLike<number>): [number, number] {
  let [high, low] = [0, 0];
  for (let i = 1; i < y.length; i++) {
    if (y[i]! > y[high]!) high = i;
    if (y[i]! < y[low]!) low = i;
  }
  return [high, low];
}
