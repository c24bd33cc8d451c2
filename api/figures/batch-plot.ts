import { type ScaleLogarithmic, scaleLog } from 'd3';
import { bottomAxis, ticksFor } from './axes.ts';
import type { BatchData, BatchRow, BatchValue } from './batch-data.ts';
import type { Box } from './box.ts';
import type { Figure, Theme } from './figure.ts';
import { drawLegend, type LegendEntry, legendHeight } from './legend.ts';
import { colourOf, markOf, marksPath } from './marks.ts';
import { newDrawing, type Parent } from './parts.ts';
import { logTicks } from './profile-ticks.ts';
import { fitText, numeral, textWidth } from './text.ts';

/** A batch as predicted, tiles as analysed and the target, oxide by oxide on a logarithmic scale. */
export const batchPlot: Figure<BatchData> = (data, at) => {
  const { width, height, theme } = at;
  const em = theme.fontSize;
  const { svg, root } = newDrawing({ id: data.id, title: data.title, description: describe(data) }, at);
  const legend = legendOf(data);
  const room = legendHeight(legend, width - 2 * em, theme);
  const names = Math.max(...data.rows.map(({ name }) => textWidth(name, em)));
  const plot = {
    ...{ left: names + 1.6 * em + gutterOf(data) * em, right: width - 1.4 * em },
    ...{ top: 0.8 * em, bottom: height - room - 4.1 * em },
  };
  const x = scaleOf(data, plot);
  const pitch = (plot.bottom - plot.top) / data.rows.length;
  const on = { plot, x, theme, pitch, gutter: gutterOf(data) * em };
  if (hasNone(data)) drawNoneName(root, on);
  data.rows.forEach((row, i) => {
    drawRow(root, row, { ...on, middle: plot.top + (i + 0.5) * pitch });
  });
  bottomAxis(root, x, {
    ...{ plot, theme, title: 'wt% of the oxides compared (log scale)' },
    ticks: logTicks(x.domain() as [number, number], ticksFor(plot.right - plot.left, theme)).filter(
      (tick) => !hasNone(data) || x(tick) > plot.left + em,
    ),
    format: (value) => String(Number(value.toPrecision(6))),
  });
  drawLegend(root, legend, { left: em, top: height - room - 0.4 * em, width: width - 2 * em, theme });
  return svg;
};

/** Room for what is none, which a logarithmic scale cannot show, em. */
const GUTTER = 3;
const gutterOf = (data: BatchData) => (hasNone(data) ? GUTTER : 0.4);
const ROW = 1.5;
const lanes = ({ tiles, target }: BatchData) => 1 + tiles.length + (target === null ? 0 : 1);

export const batchHeight = (data: BatchData, width: number, theme: Theme): number => {
  const em = theme.fontSize;
  const row = Math.max(ROW + 0.3, 0.7 * lanes(data)) * em;
  return Math.ceil(data.rows.length * row + 4.9 * em + legendHeight(legendOf(data), width - 2 * em, theme));
};

/** Rows that stand apart on a sheet of a height. */
export function batchRowsThatFit(
  data: BatchData,
  { width, height, theme }: { readonly width: number; readonly height: number; readonly theme: Theme },
): number {
  const free =
    height - 4.9 * theme.fontSize - legendHeight(legendOf(data), width - 2 * theme.fontSize, theme);
  return Math.max(2, Math.floor(free / (ROW * theme.fontSize)));
}

const valuesOf = ({ predicted, tiles }: BatchRow): BatchValue[] => [predicted, ...tiles];
const hasNone = ({ rows }: BatchData) =>
  rows.some((row) => valuesOf(row).some(({ value }) => value <= LEAST));

/** Less is shown as none. */
const LEAST = 0.005;
type Scale = ScaleLogarithmic<number, number>;

function scaleOf({ rows }: BatchData, plot: Box): Scale {
  const values = rows.flatMap((row) => [
    ...valuesOf(row).flatMap(({ value, high }) => [value, high]),
    row.target ?? 0,
  ]);
  const seen = values.filter((value) => value > LEAST);
  return scaleLog([Math.min(...seen) / 1.4, Math.max(...seen) * 1.2], [plot.left, plot.right]);
}

interface On {
  readonly plot: Box;
  readonly x: Scale;
  readonly theme: Theme;
  readonly pitch: number;
  readonly gutter: number;
}
const placeOf = (value: number, { x, plot, gutter }: On): number =>
  value <= LEAST ? plot.left - gutter / 2 : Math.max(plot.left, x(value));

function drawNoneName(root: Parent, { plot, theme, gutter }: On): void {
  root
    .append('text')
    .attr('x', plot.left - gutter / 2)
    .attr('y', plot.bottom + 1.3 * theme.fontSize)
    .attr('text-anchor', 'middle')
    .attr('fill', theme.faint)
    .text('none');
}

function drawRow(root: Parent, row: BatchRow, on: On & { readonly middle: number }): void {
  const { plot, theme, pitch, middle, gutter } = on;
  const em = theme.fontSize;
  const group = root.append('g').attr('class', 'row');
  group.append('title').text(inWords(row));
  group
    .append('line')
    .attr('x1', plot.left - gutter)
    .attr('x2', plot.right)
    .attr('y1', middle + pitch / 2)
    .attr('y2', middle + pitch / 2)
    .attr('stroke', theme.grid)
    .attr('stroke-width', 0.7 * theme.lineWidth);
  group
    .append('text')
    .attr('x', plot.left - gutter - 0.4 * em)
    .attr('y', middle + 0.33 * em)
    .attr('text-anchor', 'end')
    .attr('fill', theme.ink)
    .text(row.name);
  const marks = [
    { value: row.predicted, slot: 0, class: 'predicted' },
    ...row.tiles.map((value, i) => ({ value, slot: i + 1, class: 'tile' })),
  ];
  const all = marks.length + (row.target === null ? 0 : 1);
  const lane = (i: number) => middle + ((i - (all - 1) / 2) * 0.78 * pitch) / all;
  marks.forEach((mark, i) => {
    drawValue(group, mark, { ...on, y: lane(i) });
  });
  if (row.target !== null) drawTarget(group, row.target, { ...on, y: lane(all - 1) });
}

interface Marked {
  readonly value: BatchValue;
  readonly slot: number;
  readonly class: string;
}

function drawValue(group: Parent, mark: Marked, on: On & { readonly y: number }): void {
  const { theme, y } = on;
  const { value, low, high, below } = mark.value;
  const colour = colourOf(mark.slot, theme);
  const item = group.append('g').attr('class', mark.class);
  if (high > low && high > LEAST)
    item
      .append('line')
      .attr('x1', placeOf(low, on))
      .attr('x2', placeOf(high, on))
      .attr('y1', y)
      .attr('y2', y)
      .attr('stroke', colour)
      .attr('stroke-width', theme.lineWidth * 1.2);
  item
    .append('path')
    .attr('d', marksPath(markOf(mark.slot), 0.85 * theme.markSize, [{ x: placeOf(value, on), y }]))
    .attr('fill', below ? theme.background : colour)
    .attr('stroke', colour)
    .attr('stroke-width', below ? theme.lineWidth : 0);
}

function drawTarget(group: Parent, value: number, on: On & { readonly y: number }): void {
  const { theme, y } = on;
  group
    .append('line')
    .attr('class', 'target')
    .attr('x1', placeOf(value, on))
    .attr('x2', placeOf(value, on))
    .attr('y1', y - 0.45 * theme.fontSize)
    .attr('y2', y + 0.45 * theme.fontSize)
    .attr('stroke', theme.ink)
    .attr('stroke-width', theme.lineWidth * 2);
}

const shown = ({ value, low, high }: BatchValue) =>
  `${numeral(value, 2)} wt% (${numeral(low, 2)} to ${numeral(high, 2)})`;
const inWords = ({ oxide, predicted, tiles, target }: BatchRow): string =>
  `${oxide}: predicted ${shown(predicted)}${tiles.map((tile) => `; ${tile.below ? 'not detected, ' : ''}${shown(tile)}`).join('')}${target === null ? '' : `; target ${numeral(target, 2)} wt%`}`;
const describe = ({ rows, tiles }: BatchData) =>
  `Predicted, then ${tiles.map(({ label }) => label).join(', ') || 'the target'}. ${rows.map(inWords).join('. ')}.`;

function legendOf({ tiles, target, rows }: BatchData): LegendEntry[] {
  const below = rows.some((row) => row.tiles.some((tile) => tile.below));
  return [
    { kind: 'group', slot: 0, text: 'Predicted, with bounds' },
    ...tiles.map(({ label }, i) => ({
      ...{ kind: 'group' as const, slot: i + 1 },
      text: `${fitText(label, 1, 30)}, analysed${below && i === 0 ? ' (hollow: not detected)' : ''}`,
    })),
    ...(target === null ? [] : [{ kind: 'mark' as const, text: `Target: ${target}` }]),
  ];
}
