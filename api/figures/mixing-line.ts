import { type ScaleLinear, scaleLinear } from 'd3';
import { bottomAxis, leftAxis, ticksFor } from './axes.ts';
import type { Box } from './box.ts';
import { chemical } from './chemical.ts';
import type { Figure, Theme } from './figure.ts';
import { drawLegend, type LegendEntry, legendHeight } from './legend.ts';
import { colourOf, type Dot, markOf, marksPath } from './marks.ts';
import type { MixingData, MixingPoint } from './mixing-data.ts';
import { drawMixingNames } from './mixing-names.ts';
import { newDrawing, type Parent, replicaMark } from './parts.ts';
import { numeral } from './text.ts';

/** Slip, paint and what is left of it on two oxides, with the line that they mix along. */
export const mixingLine: Figure<MixingData> = (data, at) => {
  const { width, height, theme } = at;
  const em = theme.fontSize;
  const { svg, root } = newDrawing({ id: data.id, title: data.title, description: describe(data) }, at);
  const legend = legendOf(data);
  const room = legendHeight(legend, width - 2 * em, theme);
  const plot = { left: 4.6 * em, top: 0.9 * em, right: width - 1.4 * em, bottom: height - room - 4.1 * em };
  const on = { plot, theme, ...scalesOf(data, plot) };
  const [x, y] = data.oxides.map((oxide) => `${chemical(oxide)}, wt%`) as [string, string];
  bottomAxis(root, on.x, { plot, theme, title: x, ticks: ticksFor(plot.right - plot.left, theme) });
  leftAxis(root, on.y, { plot, theme, title: y, ticks: ticksFor(plot.bottom - plot.top, theme, 4) });
  for (const other of data.others)
    replicaMark(root, placeOf(other, on), { theme, chosen: false, scale: 0.8 });
  drawLine(root, data, on);
  for (const one of pointsOf(data)) drawErrors(root, one, on);
  drawMarks(root, data, on);
  drawMixingNames(root, data, on);
  drawLegend(root, legend, { left: em, top: height - room - 0.4 * em, width: width - 2 * em, theme });
  return svg;
};

export const mixingHeight = (data: MixingData, width: number, theme: Theme): number =>
  Math.min(0.6 * width, 40 * theme.fontSize) +
  5 * theme.fontSize +
  legendHeight(legendOf(data), width - 2 * theme.fontSize, theme);

export interface MixingOn {
  readonly plot: Box;
  readonly theme: Theme;
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
}
export const pointsOf = ({ slip, paint, drawnOff }: MixingData): MixingPoint[] => [
  slip,
  paint,
  ...(drawnOff ? [drawnOff] : []),
];
export const placeOf = ({ x, y }: MixingPoint, on: MixingOn): Dot => ({ x: on.x(x.value), y: on.y(y.value) });

function scalesOf(data: MixingData, plot: Box) {
  const all = [...pointsOf(data), ...data.others];
  const domain = (of: (point: MixingPoint) => MixingPoint['x'], end: number) => {
    const most = Math.max(end, ...all.map((one) => of(one).high));
    const least = Math.min(end, ...all.map((one) => of(one).low));
    const margin = 0.06 * (most - least || 1);
    return [Math.max(0, least - margin), most + margin];
  };
  return {
    x: scaleLinear(
      domain(({ x }) => x, data.end.x),
      [plot.left, plot.right],
    ),
    y: scaleLinear(
      domain(({ y }) => y, data.end.y),
      [plot.bottom, plot.top],
    ),
  };
}

/** Whole from the slip to what is left; broken from there on, where more could be drawn off. */
function drawLine(root: Parent, data: MixingData, on: MixingOn): void {
  const from = placeOf(data.slip, on);
  const to = placeOf(data.drawnOff ?? data.paint, on);
  const end = { x: on.x(data.end.x), y: on.y(data.end.y) };
  const stroke = (a: Dot, b: Dot, name: string) =>
    root
      .append('line')
      .attr('class', name)
      .attr('x1', a.x)
      .attr('y1', a.y)
      .attr('x2', b.x)
      .attr('y2', b.y)
      .attr('stroke', on.theme.faint)
      .attr('stroke-width', on.theme.lineWidth);
  stroke(from, to, 'mixing');
  stroke(to, end, 'beyond').attr('stroke-dasharray', `${3 * on.theme.lineWidth}`);
}

function drawErrors(root: Parent, { x, y }: MixingPoint, on: MixingOn): void {
  const bars = [
    [on.x(x.low), on.y(y.value), on.x(x.high), on.y(y.value)],
    [on.x(x.value), on.y(y.low), on.x(x.value), on.y(y.high)],
  ] as const;
  for (const [x1, y1, x2, y2] of bars)
    root
      .append('line')
      .attr('class', 'error')
      .attr('x1', x1)
      .attr('y1', y1)
      .attr('x2', x2)
      .attr('y2', y2)
      .attr('stroke', on.theme.ink)
      .attr('stroke-width', on.theme.lineWidth);
}

const SLIP = 4;

function drawMarks(root: Parent, data: MixingData, on: MixingOn): void {
  const { theme } = on;
  root
    .append('path')
    .attr('class', 'slip')
    .attr('d', marksPath(markOf(SLIP), 1.3 * theme.markSize, [placeOf(data.slip, on)]))
    .attr('fill', colourOf(SLIP, theme));
  replicaMark(root, placeOf(data.paint, on), { theme, chosen: true });
  if (data.drawnOff)
    root
      .append('path')
      .attr('class', 'drawn-off')
      .attr('d', marksPath('disc', 1.2 * theme.markSize, [placeOf(data.drawnOff, on)]))
      .attr('fill', theme.accent);
}

function legendOf({ others }: MixingData): LegendEntry[] {
  if (others.length === 0) return [];
  return [{ kind: 'replica', text: others.length === 1 ? 'Another tile' : `${others.length} other tiles` }];
}

function describe({ oxides, slip, paint, drawnOff, f }: MixingData): string {
  const say = ({ label, x, y }: MixingPoint) =>
    `${label}: ${oxides[0]} ${numeral(x.value, 2)}, ${oxides[1]} ${numeral(y.value, 2)} wt%`;
  const left = drawnOff ? `; ${say(drawnOff)} (${numeral(100 * f, 1)} %)` : '';
  return `${say(slip)}; ${say(paint)}${left}.`;
}
