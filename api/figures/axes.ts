import { type AxisScale, axisBottom, axisLeft } from 'd3';
import type { Box } from './box.ts';
import type { Theme } from './figure.ts';
import type { Parent } from './parts.ts';

export interface AxisLook {
  readonly plot: Box;
  readonly theme: Theme;
  readonly title: string;
  /** About how many ticks; fewer on a small figure. */
  readonly ticks: number | readonly number[];
  readonly format?: (value: number) => string;
}

// D3's axis asks the window for its pixel ratio unless told its offset; here there may be no window.
const OFFSET = 0.5;

export function bottomAxis(root: Parent, scale: AxisScale<number>, look: AxisLook): void {
  const { plot, theme, title } = look;
  const axis = withTicks(
    axisBottom(scale)
      .offset(OFFSET)
      .tickSizeInner(0.35 * theme.fontSize)
      .tickSizeOuter(0),
    look,
  );
  const group = root.append('g').attr('class', 'axis x').attr('transform', `translate(0,${plot.bottom})`);
  group.call(axis);
  dress(group, theme);
  group
    .append('text')
    .attr('class', 'axis-title')
    .attr('x', (plot.left + plot.right) / 2)
    .attr('y', 2.7 * theme.fontSize)
    .attr('text-anchor', 'middle')
    .attr('fill', theme.ink)
    .text(title);
}

export function leftAxis(root: Parent, scale: AxisScale<number>, look: AxisLook): void {
  const { plot, theme, title } = look;
  const axis = withTicks(
    axisLeft(scale)
      .offset(OFFSET)
      .tickSizeInner(0.35 * theme.fontSize)
      .tickSizeOuter(0),
    look,
  );
  const group = root.append('g').attr('class', 'axis y').attr('transform', `translate(${plot.left},0)`);
  group.call(axis);
  dress(group, theme);
  group
    .append('text')
    .attr('class', 'axis-title')
    .attr('transform', `translate(${-3.1 * theme.fontSize},${(plot.top + plot.bottom) / 2}) rotate(-90)`)
    .attr('text-anchor', 'middle')
    .attr('fill', theme.ink)
    .text(title);
}

function withTicks(axis: ReturnType<typeof axisLeft<number>>, { ticks, format }: AxisLook) {
  if (typeof ticks === 'number') axis.ticks(ticks);
  else axis.tickValues([...ticks]);
  if (format !== undefined) axis.tickFormat(format);
  return axis;
}

/** Takes the figure's own type and colours in place of D3's. */
function dress(group: Parent, theme: Theme): void {
  group.attr('font-size', null).attr('font-family', null);
  group.selectAll('.tick text').attr('fill', theme.faint);
  group
    .selectAll('line,path')
    .attr('stroke', theme.faint)
    .attr('stroke-width', theme.lineWidth * 0.8);
}

/** How many ticks fit on so many px without crowding. */
export const ticksFor = (px: number, theme: Theme, each = 5): number =>
  Math.max(2, Math.floor(px / (each * theme.fontSize)));
