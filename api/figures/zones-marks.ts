import type { Grade } from '../domain/trials/types.ts';
import type { Theme } from './figure.ts';
import { hatchPath } from './hatch.ts';
import { seats } from './legend.ts';
import type { Dot } from './marks.ts';
import type { Parent } from './parts.ts';
import type { ShownZone, ZonesData } from './zones-data.ts';

export type Look = Grade | 'not judged';
interface KeyEntry {
  readonly look: Look | null;
  readonly text: string;
}
export const lookOf = ({ grade }: ShownZone): Look => grade ?? 'not judged';

export interface Shaped {
  readonly look: Look;
  readonly theme: Theme;
}

/** Gloss by how full a zone is: empty, hatched, full; a broken edge where nobody judged it. */
export function drawShape(item: Parent, corners: readonly Dot[], { look, theme }: Shaped): void {
  const colour = theme.palette[0]!;
  item
    .append('path')
    .attr('d', `M${corners.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join('L')}Z`)
    .attr('fill', look === 'glossy' || look === 'satin' ? colour : theme.background)
    .attr('fill-opacity', look === 'satin' ? 0.14 : null)
    .attr('stroke', theme.faint)
    .attr('stroke-width', theme.lineWidth)
    .attr('stroke-dasharray', look === 'not judged' ? `${3 * theme.lineWidth}` : null);
  if (look === 'satin')
    item
      .append('path')
      .attr('class', 'hatch')
      .attr('d', hatchPath(corners, 0.45 * theme.fontSize))
      .attr('stroke', colour)
      .attr('stroke-width', 0.8 * theme.lineWidth);
}

export function keyOf({ panels, thickness }: ZonesData, short: boolean): KeyEntry[] {
  const seen = new Set(panels.flatMap(({ zones }) => zones.map(lookOf)));
  const looks = (['matt', 'satin', 'glossy', 'not judged'] as const).filter((look) => seen.has(look));
  const unit = thickness === 'coats' ? 'coats of paint' : 'thickness of the paint, µm';
  return [
    ...looks.map((look) => ({ look, text: look })),
    ...(short ? [{ look: null, text: `Number: ${unit}` }] : []),
  ];
}

export function drawKey(
  root: Parent,
  entries: readonly KeyEntry[],
  { left, top, width, theme }: { left: number; top: number; width: number; theme: Theme },
): void {
  const em = theme.fontSize;
  const group = root.append('g').attr('class', 'legend').attr('transform', `translate(${left},${top})`);
  for (const { entry, text, x, middle } of seats(entries, width, theme)) {
    const item = group.append('g').attr('transform', `translate(${x},${middle})`);
    if (entry.look !== null)
      drawShape(item, rectangle(0, -0.5 * em, 1.4 * em, 0.5 * em), { look: entry.look, theme });
    item
      .append('text')
      .attr('x', (entry.look === null ? 0 : 1.9) * em)
      .attr('y', 0.33 * em)
      .attr('fill', theme.ink)
      .text(text);
  }
}

const rectangle = (left: number, top: number, right: number, bottom: number): Dot[] => [
  { x: left, y: top },
  { x: right, y: top },
  { x: right, y: bottom },
  { x: left, y: bottom },
];
