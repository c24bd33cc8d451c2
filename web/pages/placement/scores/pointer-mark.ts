import { select } from 'd3';
import type { Theme } from '../../../../api/figures/figure.ts';
import type { ScoresLayout } from '../../../../api/figures/scores-layout.ts';
import { textWidth } from '../../../../api/figures/text.ts';
import type { Read } from './walk.ts';

/** Rings the point that is read and names it, on the drawing laid over the plot. */
export function markRead(
  over: SVGSVGElement,
  read: Read | null,
  { layout, theme }: { readonly layout: ScoresLayout; readonly theme: Theme },
): void {
  over.replaceChildren();
  if (read === null) return;
  const { plot } = layout;
  const [x, y] = [layout.x(read.x), layout.y(read.y)];
  if (x < plot.left || x > plot.right || y < plot.top || y > plot.bottom) return;
  const em = theme.fontSize;
  const root = select(over);
  const radius = theme.markSize * 1.35;
  root
    .append('circle')
    .attr('cx', x)
    .attr('cy', y)
    .attr('r', radius)
    .attr('fill', 'none')
    .attr('stroke', theme.ink)
    .attr('stroke-width', 2);
  const wide = textWidth(read.label, em, 'semibold') + em;
  const left = Math.min(Math.max(x - wide / 2, plot.left), plot.right - wide);
  const above = y - radius - 2.1 * em > plot.top;
  const top = above ? y - radius - 2.1 * em : y + radius + 0.4 * em;
  root
    .append('rect')
    .attr('x', left)
    .attr('y', top)
    .attr('width', wide)
    .attr('height', 1.7 * em)
    .attr('rx', 3)
    .attr('fill', theme.ink);
  root
    .append('text')
    .attr('x', left + em / 2)
    .attr('y', top + 1.2 * em)
    .attr('fill', theme.background)
    .attr('font-weight', 600)
    .attr('font-size', em)
    .text(read.label);
}
