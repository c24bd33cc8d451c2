import { RequirementError } from '../requirement.ts';
import type { Corner, Outline } from './types.ts';

/**
 * Area inside an outline as a share of the picture, 0–1.
 *
 * @example
 * outlineArea([[0, 0], [0.5, 0], [0.5, 0.5], [0, 0.5]]) // 0.25
 */
export function outlineArea(outline: Outline): number {
  const twice = outline.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}

/** A millionth of the picture: a few pixels. */
const LEAST_AREA = 1e-6;

/**
 * Gives the outline back if it encloses a place in the picture: three corners or more, all inside the picture, sides
 * that do not cross. Throws, saying which is not met.
 *
 * @example
 * requireOutline([[0, 0], [1, 0], [1, 1]]).length // 3
 * requireOutline([[0, 0], [1, 1], [1, 0], [0, 1]]) // throws sides that do not cross
 * requireOutline([[0, 0], [1, 1]]) // throws at least three corners; found 2
 */
export function requireOutline(outline: Outline): Outline {
  if (outline.length < 3)
    throw new RequirementError(`an outline needs at least three corners; found ${outline.length}`);
  const off = outline.findIndex((corner) => corner.some((share) => !(share >= 0 && share <= 1)));
  if (off >= 0)
    throw new RequirementError(
      `an outline needs its corners inside the picture, 0 to 1; corner ${off + 1} is at ${outline[off]!.join(', ')}`,
    );
  const crossed = crossing(outline);
  if (crossed)
    throw new RequirementError(
      `an outline needs sides that do not cross; those after corners ${crossed.join(' and ')} do`,
    );
  const area = outlineArea(outline);
  if (area < LEAST_AREA)
    throw new RequirementError(
      `an outline needs to enclose a millionth of the picture or more; found ${area.toPrecision(2)}`,
    );
  return outline;
}

function crossing(outline: Outline): [number, number] | null {
  const side = (i: number) => [outline[i]!, outline[(i + 1) % outline.length]!] as const;
  for (let i = 0; i < outline.length; i++)
    for (let j = i + 2; j < outline.length; j++) {
      const neighbours = i === 0 && j === outline.length - 1;
      if (!neighbours && cross(side(i), side(j))) return [i + 1, j + 1];
    }
  return null;
}

type Side = readonly [Corner, Corner];
const turn = (a: Corner, b: Corner, c: Corner): number =>
  Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
const cross = ([a, b]: Side, [c, d]: Side): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

/** Pixels of one row whose middles lie inside: from `from` up to and without `to`. */
export interface Run {
  readonly row: number;
  readonly from: number;
  readonly to: number;
}

/**
 * The pixels whose middles lie inside an outline, as runs row by row. Throws as `requireOutline`.
 *
 * @example
 * runsInside([[0, 0], [0.5, 0], [0.5, 1], [0, 1]], { width: 4, height: 2 }) // [{ row: 0, from: 0, to: 2 }, { row: 1, from: 0, to: 2 }]
 */
export function runsInside(outline: Outline, size: { width: number; height: number }): Run[] {
  requireOutline(outline);
  const corners = outline.map(([x, y]) => [x * size.width, y * size.height] as const);
  const ys = corners.map(([, y]) => y);
  const runs: Run[] = [];
  const last = Math.min(size.height - 1, Math.floor(Math.max(...ys)));
  for (let row = Math.max(0, Math.floor(Math.min(...ys))); row <= last; row++) {
    const at = meetings(corners, row + 0.5);
    for (let i = 0; i + 1 < at.length; i += 2) {
      const from = Math.max(0, Math.ceil(at[i]! - 0.5));
      const to = Math.min(size.width, Math.ceil(at[i + 1]! - 0.5));
      if (to > from) runs.push({ row, from, to });
    }
  }
  return runs;
}

/** Where a level line meets the sides, from left to right. */
function meetings(corners: readonly Corner[], y: number): number[] {
  return corners
    .flatMap(([x, top], i) => {
      const [nextX, nextY] = corners[(i + 1) % corners.length]!;
      return top <= y === nextY <= y ? [] : [x + ((y - top) / (nextY - top)) * (nextX - x)];
    })
    .sort((a, b) => a - b);
}
