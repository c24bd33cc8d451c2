import { line, symbol, symbolTimes } from 'd3';
import type { CurvePoint } from '../domain/firing/types.ts';
import type { FiringCurveData } from './firing-curve-data.ts';
import { colourOf, dashOf, type On } from './firing-curve-look.ts';
import type { Parent } from './parts.ts';
import { fitText, numeral } from './text.ts';

/** Each channel in the pieces that its gaps leave, its spikes as crosses, its name at its end. */
export function drawChannels(root: Parent, data: FiringCurveData, on: On): void {
  const { x, y, theme, unit, plot } = on;
  const path = line<CurvePoint>(
    (p) => x(p.seconds / unit),
    (p) => y(Math.max(0, p.celsius)),
  );
  data.curves.forEach(({ points, spikes = [] }, slot) => {
    for (const piece of piecesBetween(points, data.gaps ?? []))
      root
        .append('path')
        .attr('class', 'curve')
        .attr('d', path([...piece]))
        .attr('fill', 'none')
        .attr('stroke', colourOf(slot, theme))
        .attr('stroke-dasharray', dashOf(slot, theme) || null)
        .attr('stroke-linejoin', 'round')
        .attr('stroke-width', 1.6 * theme.lineWidth);
    for (const spike of spikes)
      root
        .append('path')
        .attr('class', 'spike')
        .attr('d', symbol(symbolTimes, 4 * theme.markSize)())
        .attr(
          'transform',
          `translate(${x(spike.seconds / unit)},${Math.min(plot.bottom, Math.max(plot.top + 4, y(spike.celsius)))})`,
        )
        .attr('stroke', colourOf(slot, theme))
        .attr('stroke-width', theme.lineWidth)
        .append('title')
        .text(`Left out: a jump to ${numeral(spike.celsius, 0)} °C and back`);
  });
  drawNames(root, data, on);
}

function piecesBetween(
  points: readonly CurvePoint[],
  gaps: readonly { readonly from: number; readonly to: number }[],
): CurvePoint[][] {
  const pieces: CurvePoint[][] = [];
  points.forEach((point, i) => {
    const before = points[i - 1];
    const broken = before && gaps.some((gap) => before.seconds <= gap.from && point.seconds >= gap.to);
    if (!before || broken) pieces.push([]);
    pieces.at(-1)!.push(point);
  });
  return pieces;
}

/** Names beside the lines' ends, in their order from hot to cold, pushed apart where they would touch. */
function drawNames(root: Parent, { curves }: FiringCurveData, { y, plot, theme, label }: On): void {
  const size = 0.95 * theme.fontSize;
  const wanted = curves
    .flatMap(({ name, points }, slot) => {
      const end = points.at(-1);
      return end ? [{ name, slot, y: y(Math.max(0, end.celsius)) }] : [];
    })
    .sort((a, b) => a.y - b.y);
  const step = 1.15 * size;
  const tops: number[] = [];
  for (const { y: want } of wanted) tops.push(Math.max(want, (tops.at(-1) ?? plot.top) + step));
  const over = Math.max(0, (tops.at(-1) ?? 0) - plot.bottom);
  wanted.forEach(({ name, slot }, i) => {
    const lower = Math.min(tops[i]! - over, plot.bottom - (wanted.length - 1 - i) * step);
    const from = plot.right + 0.3 * theme.fontSize;
    root
      .append('line')
      .attr('class', 'curve-sample')
      .attr('x1', from)
      .attr('x2', from + 1.2 * theme.fontSize)
      .attr('y1', lower)
      .attr('y2', lower)
      .attr('stroke', colourOf(slot, theme))
      .attr('stroke-dasharray', dashOf(slot, theme) || null)
      .attr('stroke-width', 1.6 * theme.lineWidth);
    root
      .append('text')
      .attr('class', 'curve-name')
      .attr('x', from + 1.5 * theme.fontSize)
      .attr('y', lower)
      .attr('dy', '0.32em')
      .attr('font-size', size)
      .attr('font-weight', 600)
      .attr('fill', theme.ink)
      .text(fitText(name, size, label + 0.5 * theme.fontSize, 'semibold'));
  });
}
