import type { Bounded } from '../domain/firing/types.ts';
import type { FiringCurveData } from './firing-curve-data.ts';
import { colourOf, type On } from './firing-curve-look.ts';
import type { Parent } from './parts.ts';
import { numeral, textWidth } from './text.ts';

/** Where each channel was hottest, with its error; the hottest of all in figures. */
export function drawPeaks(root: Parent, { curves }: FiringCurveData, on: On): void {
  const { x, y, theme, unit, plot } = on;
  const peaks = curves.flatMap(({ peak, name }, slot) => (peak ? [{ peak, name, slot }] : []));
  const hottest = peaks.reduce((top, one) => Math.max(top, one.peak.value), 0);
  for (const { peak, name, slot } of peaks) {
    const across = x(peak.seconds / unit);
    const item = root.append('g').attr('class', 'peak');
    bar(item, { across, bounds: peak, colour: colourOf(slot, theme) }, on);
    item.append('title').text(`${name}: peak ${withError(peak)}`);
    if (peak.value < hottest) continue;
    const words = withError(peak);
    const half = textWidth(words, theme.fontSize, 'semibold') / 2;
    item
      .append('text')
      .attr('x', Math.min(plot.right - half, Math.max(plot.left + half, across)))
      .attr('y', y(peak.high) - 0.45 * theme.fontSize)
      .attr('text-anchor', 'middle')
      .attr('font-weight', 600)
      .attr('fill', theme.ink)
      .text(words);
  }
}

const withError = ({ value, low, high }: Bounded) =>
  `${numeral(value, 0)} ± ${numeral(Math.max(value - low, high - value), 0)} °C`;

export function drawReadings(root: Parent, { readings }: FiringCurveData, on: On): void {
  const { x, theme, unit } = on;
  for (const { seconds, bounds, where } of readings) {
    const item = root.append('g').attr('class', 'reading');
    bar(item, { across: x(seconds / unit), bounds, colour: theme.accent }, on);
    const { value, low, high } = bounds;
    item
      .append('title')
      .text(
        `By hand: ${numeral(value, 0)} °C (${numeral(low, 0)} to ${numeral(high, 0)})${where ? `, ${where}` : ''}`,
      );
  }
}

/** A value with the bar of its bounds. */
function bar(
  item: Parent,
  { across, bounds, colour }: { readonly across: number; readonly bounds: Bounded; readonly colour: string },
  { y, theme }: On,
): void {
  item
    .append('line')
    .attr('x1', across)
    .attr('x2', across)
    .attr('y1', y(bounds.low))
    .attr('y2', y(bounds.high))
    .attr('stroke', colour)
    .attr('stroke-width', 1.4 * theme.lineWidth);
  item
    .append('circle')
    .attr('cx', across)
    .attr('cy', y(bounds.value))
    .attr('r', 0.42 * theme.markSize)
    .attr('fill', colour);
}
