import type { Dot } from './marks.ts';

/**
 * Strokes that fill a closed shape at 45°, `step` px apart, as one path. Drawn one by one, because not every reader of
 * PDF shows a pattern; the shape may be hollow in places.
 */
export function hatchPath(shape: readonly Dot[], step: number): string {
  const turned = shape.map(({ x, y }) => ({ along: x + y, across: x - y }));
  const rows = turned.map(({ across }) => across);
  const apart = step * Math.SQRT2;
  const strokes: string[] = [];
  for (let row = Math.ceil(Math.min(...rows) / apart) * apart; row < Math.max(...rows); row += apart) {
    const crossings = crossingsAt(turned, row);
    for (let i = 0; i + 1 < crossings.length; i += 2)
      strokes.push(`M${place(crossings[i]!, row)}L${place(crossings[i + 1]!, row)}`);
  }
  return strokes.join('');
}

interface Turned {
  readonly along: number;
  readonly across: number;
}

/** Where the shape's sides cross a row, in order. */
function crossingsAt(shape: readonly Turned[], row: number): number[] {
  return shape
    .flatMap((from, i) => {
      const to = shape[(i + 1) % shape.length]!;
      if (from.across <= row === to.across <= row) return [];
      const share = (row - from.across) / (to.across - from.across);
      return [from.along + share * (to.along - from.along)];
    })
    .sort((a, b) => a - b);
}

const place = (along: number, across: number): string =>
  `${((along + across) / 2).toFixed(1)},${((along - across) / 2).toFixed(1)}`;
