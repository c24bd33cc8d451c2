import type { Box } from './box.ts';
import type { Dot } from './marks.ts';

const CELL = 4;

/**
 * Counts the dots in a box in constant time, to the nearest 4 px: a table of running sums over the plane, made once
 * for all dots, so that thousands of sherds do not slow the search for a label's place.
 */
export function dotCounter(dots: readonly Dot[], bounds: Box): (box: Box) => number {
  const columns = Math.max(1, Math.ceil((bounds.right - bounds.left) / CELL));
  const rows = Math.max(1, Math.ceil((bounds.bottom - bounds.top) / CELL));
  const sums = new Int32Array((columns + 1) * (rows + 1));
  for (const { x, y } of dots) {
    const column = Math.floor((x - bounds.left) / CELL);
    const row = Math.floor((y - bounds.top) / CELL);
    if (column < 0 || row < 0 || column >= columns || row >= rows) continue;
    const at = (row + 1) * (columns + 1) + column + 1;
    sums[at] = sums[at]! + 1;
  }
  for (let row = 1; row <= rows; row++) {
    let running = 0;
    for (let column = 1; column <= columns; column++) {
      const at = row * (columns + 1) + column;
      running += sums[at]!;
      sums[at] = running + sums[at - columns - 1]!;
    }
  }
  const column = (x: number) => clamp(Math.round((x - bounds.left) / CELL), columns);
  const row = (y: number) => clamp(Math.round((y - bounds.top) / CELL), rows);
  return (box) => {
    const [left, right, top, bottom] = [column(box.left), column(box.right), row(box.top), row(box.bottom)];
    const sum = (r: number, c: number) => sums[r * (columns + 1) + c]!;
    return sum(bottom, right) - sum(top, right) - sum(bottom, left) + sum(top, left);
  };
}
const clamp = (value: number, most: number): number => Math.min(most, Math.max(0, value));
