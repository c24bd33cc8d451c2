import type { Theme } from './figure.ts';
import { markOf, marksPath } from './marks.ts';
import { type Parent, replicaMark } from './parts.ts';
import type { ProfileData, ProfileRow, ProfileSpread } from './profile-data.ts';

export interface Line {
  readonly x: (value: number) => number;
  readonly y: number;
  readonly rowHeight: number;
  readonly theme: Theme;
}

/** A thin line over all sherds, a bar over the middle half, a tick at the median; a few sherds each by itself. */
export function drawSpread(
  parent: Parent,
  spread: ProfileSpread,
  line: Line & { readonly colour: string },
): void {
  const { x, y, theme, colour } = line;
  const level = (from: number, to: number, thickness: number) =>
    parent
      .append('line')
      .attr('x1', x(from))
      .attr('x2', x(to))
      .attr('y1', y)
      .attr('y2', y)
      .attr('stroke', colour)
      .attr('stroke-width', thickness);
  level(spread.low, spread.high, theme.lineWidth).attr('class', 'range');
  if (spread.quartiles === null) return;
  const [first, median, third] = spread.quartiles;
  const half = 0.24 * line.rowHeight;
  level(first, third, 2 * half)
    .attr('class', 'quartiles')
    .attr('stroke-opacity', 0.3);
  parent
    .append('line')
    .attr('class', 'median')
    .attr('x1', x(median))
    .attr('x2', x(median))
    .attr('y1', y - half)
    .attr('y2', y + half)
    .attr('stroke', colour)
    .attr('stroke-width', 2 * theme.lineWidth);
}

/** Sherds one by one where they are few, then the replicas, the chosen one foremost. */
export function drawValues(
  parent: Parent,
  data: ProfileData,
  { row, line }: { readonly row: ProfileRow; readonly line: Line & { readonly colour?: string } },
): void {
  const { x, y, theme } = line;
  if (row.spread.quartiles === null)
    parent
      .append('path')
      .attr('class', 'each')
      .attr(
        'd',
        marksPath(
          markOf(data.group.slot),
          0.8 * theme.markSize,
          row.spread.each.map((value) => ({ x: x(value), y })),
        ),
      )
      .attr('fill', theme.palette[data.group.slot % theme.palette.length]!);
  const order = data.replicas
    .map((_, i) => i)
    .sort((i, j) => Number(data.replicas[i]!.chosen) - Number(data.replicas[j]!.chosen));
  for (const i of order) {
    const value = row.values[i]!;
    if (value > 0)
      replicaMark(parent, { x: x(value), y }, { theme, chosen: data.replicas[i]!.chosen, scale: 0.72 });
  }
}
