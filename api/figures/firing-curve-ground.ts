import type { Theme } from './figure.ts';
import type { FiringCurveData } from './firing-curve-data.ts';
import type { On } from './firing-curve-look.ts';
import type { Parent } from './parts.ts';
import { fitText, numeral, textWidth } from './text.ts';

/** Stages of air as strips above the plot, named; a faint edge shows where one ends. */
export function drawStages(root: Parent, { stages }: FiringCurveData, { plot, x, theme, unit }: On): void {
  const em = theme.fontSize;
  for (const stage of stages) {
    const [from, to] = [x(stage.from / unit), x(stage.to / unit)];
    const item = root.append('g').attr('class', 'stage');
    rule(item, { x1: to, x2: to, y1: plot.top - 1.6 * em, y2: plot.bottom }, theme);
    item
      .append('text')
      .attr('x', (from + to) / 2)
      .attr('y', plot.top - 0.6 * em)
      .attr('text-anchor', 'middle')
      .attr('fill', theme.faint)
      .text(fitText(stage.air, em, to - from - 0.5 * em));
  }
}

/** Stretches without readings, hatched by their edges and named where there is room. */
export function drawGaps(root: Parent, { gaps = [] }: FiringCurveData, { plot, x, theme, unit }: On): void {
  const em = theme.fontSize;
  for (const gap of gaps) {
    const [from, to] = [x(gap.from / unit), x(gap.to / unit)];
    const item = root.append('g').attr('class', 'gap');
    item
      .append('rect')
      .attr('x', from)
      .attr('y', plot.top)
      .attr('width', Math.max(1, to - from))
      .attr('height', plot.bottom - plot.top)
      .attr('fill', theme.grid)
      .attr('fill-opacity', 0.6);
    item.append('title').text('No readings');
    if (textWidth('no readings', 0.95 * em) < to - from)
      item
        .append('text')
        .attr('x', (from + to) / 2)
        .attr('y', plot.bottom - 0.6 * em)
        .attr('text-anchor', 'middle')
        .attr('font-size', 0.95 * em)
        .attr('fill', theme.faint)
        .text('no readings');
  }
}

/** Chosen temperatures, a line across each with its figure at the right, where it does not touch the one above. */
export function drawMarks(root: Parent, { marks }: FiringCurveData, { plot, y, theme }: On): void {
  const top = y.domain()[1]!;
  const size = 0.95 * theme.fontSize;
  let free = Number.NEGATIVE_INFINITY;
  for (const mark of marks.filter((celsius) => celsius < top).toSorted((a, b) => b - a)) {
    const item = root.append('g').attr('class', 'mark');
    rule(item, { x1: plot.left, x2: plot.right, y1: y(mark), y2: y(mark) }, theme);
    if (y(mark) - size < free) continue;
    free = y(mark);
    item
      .append('text')
      .attr('x', plot.right - 2)
      .attr('y', y(mark) - 0.25 * theme.fontSize)
      .attr('text-anchor', 'end')
      .attr('font-size', size)
      .attr('fill', theme.faint)
      .text(`${numeral(mark, 0)} °C`);
  }
}

function rule(
  parent: Parent,
  at: { readonly x1: number; readonly x2: number; readonly y1: number; readonly y2: number },
  theme: Theme,
): void {
  parent
    .append('line')
    .attr('x1', at.x1)
    .attr('x2', at.x2)
    .attr('y1', at.y1)
    .attr('y2', at.y2)
    .attr('stroke', theme.grid)
    .attr('stroke-width', theme.lineWidth);
}
