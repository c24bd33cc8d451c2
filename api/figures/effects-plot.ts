import type { ScaleContinuousNumeric } from 'd3';
import { bottomAxis, ticksFor } from './axes.ts';
import type { Box } from './box.ts';
import type { EffectRow, EffectsData, EffectsPanel } from './effects-data.ts';
import { axisTicks, layEffects, type PanelBox, scaleOf, textRoom, wordsOfRow } from './effects-layout.ts';
import type { Figure, Theme } from './figure.ts';
import { newDrawing, type Parent } from './parts.ts';

/** Each factor's effect as a mark on its interval, with the verdict in a word and the numbers beside it. */
export const effectsPlot: Figure<EffectsData> = (data, at) => {
  const { svg, root } = newDrawing({ id: data.id, title: data.title, description: describe(data) }, at);
  for (const box of layEffects(data, at)) drawPanel(root, box, at.theme);
  return svg;
};

const describe = ({ analysis }: EffectsData) => analysis.effects.map(({ sentence }) => sentence).join(' ');

interface On {
  readonly x: ScaleContinuousNumeric<number, number>;
  readonly plot: Box;
  readonly theme: Theme;
}

function drawPanel(root: Parent, { panel, plot, width }: PanelBox, theme: Theme): void {
  const em = theme.fontSize;
  const on: On = { x: scaleOf(panel, plot), plot, theme };
  drawNone(root, panel, on);
  const pitch = (plot.bottom - plot.top) / panel.rows.length;
  panel.rows.forEach((row, i) => {
    const middle = plot.top + (i + 0.5) * pitch;
    const item = root.append('g').attr('class', `effect ${row.verdict.replace(' ', '-')}`);
    item.append('title').text(`${row.factor}, ${row.contrast}: ${row.verdict}, ${row.words}`);
    drawInterval(item, row, { ...on, middle });
    const { left, strong, right } = wordsOfRow(row, width, theme);
    drawLines(item, left, { x: em, middle, strong, theme });
    drawLines(item, right, { x: width - em - textRoom(width, theme).right, middle, strong: 1, theme });
  });
  bottomAxis(root, on.x, {
    ...{
      plot,
      theme,
      title: panel.axis,
      ticks: axisTicks(panel, plot, ticksFor(plot.right - plot.left, theme)),
    },
    format: (value) => formatOf(panel.scale, value),
  });
}

const formatOf = (scale: EffectsPanel['scale'], value: number): string =>
  scale === 'share'
    ? String(Math.round(100 * value)).replace('-', '−')
    : String(Number(value.toPrecision(3))).replace('-', '−');

/** The line of no effect, named above the panel. */
function drawNone(root: Parent, { scale }: EffectsPanel, { x, plot, theme }: On): void {
  const none = x(scale === 'log-odds' ? 1 : 0);
  root
    .append('line')
    .attr('class', 'none')
    .attr('x1', none)
    .attr('x2', none)
    .attr('y1', plot.top)
    .attr('y2', plot.bottom)
    .attr('stroke', theme.faint)
    .attr('stroke-width', theme.lineWidth)
    .attr('stroke-dasharray', `${3 * theme.lineWidth}`);
  root
    .append('text')
    .attr('x', none)
    .attr('y', plot.top - 0.35 * theme.fontSize)
    .attr('text-anchor', 'middle')
    .attr('fill', theme.faint)
    .text('no effect');
}

function drawInterval(item: Parent, row: EffectRow, on: On & { readonly middle: number }): void {
  const { x, plot, theme, middle } = on;
  const matters = row.verdict === 'matters';
  const colour = matters ? theme.accent : theme.ink;
  const [left, right] = [endOf(row.low, on, plot.left), endOf(row.high, on, plot.right)];
  item
    .append('line')
    .attr('class', 'interval')
    .attr('x1', left.at)
    .attr('x2', right.at)
    .attr('y1', middle)
    .attr('y2', middle)
    .attr('stroke', colour)
    .attr('stroke-width', theme.lineWidth * (matters ? 2 : 1.3));
  drawEnd(item, left, { ...on, colour, way: -1 });
  drawEnd(item, right, { ...on, colour, way: 1 });
  if (row.estimate === null) return;
  const at = x(row.estimate);
  if (at < plot.left || at > plot.right) return;
  item
    .append('circle')
    .attr('class', 'estimate')
    .attr('cx', at)
    .attr('cy', middle)
    .attr('r', 0.55 * theme.markSize)
    .attr('fill', matters ? colour : theme.background)
    .attr('stroke', colour)
    .attr('stroke-width', theme.lineWidth * 1.3);
}

interface End {
  readonly at: number;
  readonly open: boolean;
}

/** Where an interval ends; open where it has no bound or runs off the axis. */
function endOf(bound: number | null, { x, plot }: On, edge: number): End {
  const at = bound === null ? edge : x(bound);
  return at < plot.left || at > plot.right || bound === null ? { at: edge, open: true } : { at, open: false };
}

/** A cross-stroke where the interval ends, an arrow where it goes on. */
function drawEnd(
  item: Parent,
  { at, open }: End,
  { middle, theme, colour, way }: { middle: number; theme: Theme; colour: string; way: 1 | -1 },
): void {
  const [long, half] = [0.6 * theme.fontSize, 0.3 * theme.fontSize];
  const d = open
    ? `M${at - way * long},${middle - half}L${at},${middle}L${at - way * long},${middle + half}`
    : `M${at},${middle - half}V${middle + half}`;
  item
    .append('path')
    .attr('class', open ? 'open' : 'end')
    .attr('d', d)
    .attr('fill', 'none')
    .attr('stroke', colour)
    .attr('stroke-width', theme.lineWidth * 1.3);
}

/** Lines of words about a height: the first ones strong, the rest faint. */
function drawLines(
  item: Parent,
  lines: readonly string[],
  { x, middle, strong, theme }: { x: number; middle: number; strong: number; theme: Theme },
): void {
  const em = theme.fontSize;
  lines.forEach((line, i) => {
    item
      .append('text')
      .attr('x', x)
      .attr('y', middle + ((i - (lines.length - 1) / 2) * 1.2 + 0.33) * em)
      .attr('font-weight', i < strong ? 600 : null)
      .attr('fill', i < strong ? theme.ink : theme.faint)
      .text(line);
  });
}
