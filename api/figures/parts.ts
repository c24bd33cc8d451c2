import { type Selection, select } from 'd3';
import type { At, Theme } from './figure.ts';
import type { Dot } from './marks.ts';

const SVG = 'http://www.w3.org/2000/svg';
// biome-ignore lint/suspicious/noExplicitAny: D3's own types for a selection whose data is not used
export type Parent = Selection<any, unknown, any, any>;

export interface Heading {
  readonly id: string;
  readonly title: string;
  /** What the figure shows, for those who cannot see it. */
  readonly description: string;
}

/** An empty drawing on its background, with its title and description. */
export function newDrawing(heading: Heading, at: At): { svg: SVGSVGElement; root: Parent } {
  const { document, width, height, theme } = at;
  const svg = document.createElementNS(SVG, 'svg') as SVGSVGElement;
  const root: Parent = select(svg);
  root
    .attr('width', width)
    .attr('height', height)
    .attr('viewBox', `0 0 ${width} ${height}`)
    .attr('role', 'img')
    .attr('aria-labelledby', `${heading.id}-title ${heading.id}-description`)
    .attr('font-family', theme.fontFamily)
    .attr('font-size', theme.fontSize);
  root.append('title').attr('id', `${heading.id}-title`).text(heading.title);
  root.append('desc').attr('id', `${heading.id}-description`).text(heading.description);
  root.append('rect').attr('width', width).attr('height', height).attr('fill', theme.background);
  return { svg, root };
}

/** The replica's own mark, which no ware group has: a ring round a dot; the chosen one in the accent, larger. */
export function replicaMark(
  parent: Parent,
  { x, y }: Dot,
  { theme, chosen, scale = 1 }: { readonly theme: Theme; readonly chosen: boolean; readonly scale?: number },
): void {
  const colour = chosen ? theme.accent : theme.ink;
  const radius = scale * replicaRadius(theme, chosen);
  const mark = parent.append('g').attr('class', chosen ? 'replica chosen' : 'replica');
  mark
    .append('circle')
    .attr('cx', x)
    .attr('cy', y)
    .attr('r', radius)
    .attr('fill', theme.background)
    .attr('fill-opacity', 0.8)
    .attr('stroke', colour)
    .attr('stroke-width', scale * theme.lineWidth * (chosen ? 2.2 : 1.6));
  mark
    .append('circle')
    .attr('cx', x)
    .attr('cy', y)
    .attr('r', radius * 0.36)
    .attr('fill', colour);
}
export const replicaRadius = (theme: Theme, chosen: boolean): number =>
  theme.markSize * (chosen ? 0.95 : 0.75);
