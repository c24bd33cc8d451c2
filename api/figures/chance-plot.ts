import { area, line, scaleLinear } from 'd3';
import type { ChanceCurve, ChancePoint, Level } from '../domain/trials/types.ts';
import { bottomAxis, leftAxis, ticksFor } from './axes.ts';
import { drawKey, drawZones, keyOf, type On } from './chance-zones.ts';
import type { At, Figure, Theme } from './figure.ts';
import { legendHeight } from './legend.ts';
import { newDrawing, type Parent } from './parts.ts';
import { fitText, numeral } from './text.ts';

export interface ChanceData {
  readonly id: string;
  readonly curve: ChanceCurve;
}
export const chanceHeight = (_: ChanceData, width: number, theme: Theme): number =>
  Math.max(22 * theme.fontSize, 0.5 * width);

/** Chance of a glossy zone against one factor: line, band, and every zone it rests on above or below. */
export const chancePlot: Figure<ChanceData> = ({ id, curve }, at) => {
  const title = `Chance of a ${curve.of} zone against ${curve.against}`;
  const { svg, root } = newDrawing({ id, title, description: describe(curve) }, at);
  const on = layoutOf(curve, at);
  drawAxes(root, curve, on);
  if (curve.unit === null) drawLevels(root, curve, on);
  else drawCurve(root, curve, on);
  drawZones(root, curve, on);
  drawKey(root, curve, at);
  return svg;
};

function layoutOf(curve: ChanceCurve, { width, height, theme }: At): On {
  const em = theme.fontSize;
  const key = legendHeight(keyOf(curve), width - 2 * em, theme);
  const plot = { left: 4.4 * em, top: 2.6 * em, right: width - 1.2 * em, bottom: height - key - 4 * em };
  const levels = curve.points.map((point) => point.at);
  const place = (level: Level) =>
    curve.unit === null ? levels.findIndex((one) => String(one) === String(level)) : Number(level);
  const ats = levels.map(place);
  const [least, most] = [Math.min(...ats), Math.max(...ats)];
  const margin = curve.unit === null ? 0.6 : 0.05 * (most - least || 1);
  const x = scaleLinear([least - margin, most + margin], [plot.left, plot.right]);
  return { plot, theme, place, x, y: scaleLinear([0, 1], [plot.bottom, plot.top]) };
}

function describe({ points, against, unit, of, data, level }: ChanceCurve): string {
  const say = ({ at, chance, low, high }: ChancePoint) =>
    `${typeof at === 'number' ? numeral(at, 1) : at}${unit ? ` ${unit}` : ''}: ${percent(chance)} (${percent(low)} to ${percent(high)})`;
  const ends = points.length > 6 ? [points[0]!, points.at(-1)!] : points;
  return `Chance of ${of} by ${against}, ${numeral(100 * level, 0)} % intervals. ${ends.map(say).join('; ')}. From ${data.length} zones.`;
}

const percent = (share: number) => `${numeral(100 * share, 0)} %`;

function drawAxes(root: Parent, curve: ChanceCurve, { plot, x, y, theme }: On): void {
  const name = curve.unit && curve.unit !== curve.against ? `${curve.against}, ${curve.unit}` : curve.against;
  const look = { plot, theme };
  const room = (plot.right - plot.left) / Math.max(1, curve.points.length);
  const levels = curve.points.map((point) => String(point.at));
  const across =
    curve.unit === null
      ? {
          ticks: levels.map((_, i) => i),
          format: (i: number) => fitText(levels[i] ?? '', theme.fontSize, room - 0.5 * theme.fontSize),
        }
      : ticksAt(curve, ticksFor(plot.right - plot.left, theme));
  bottomAxis(root, x, { ...look, title: name, ...across });
  leftAxis(root, y, { ...look, title: `Chance of a ${curve.of} zone`, ticks: 5, format: percent });
}

const plain = (value: number): string => String(Number(value.toPrecision(6))).replace('-', '−');

/** The settings themselves where they are few enough to be read; else as many as fit. */
function ticksAt({ data }: ChanceCurve, fit: number) {
  const seen = [...new Set(data.map((one) => Number(one.at)))].sort((a, b) => a - b);
  const few = seen.length > 0 && seen.length <= fit;
  return few ? { ticks: seen, format: plain } : { ticks: fit };
}

function drawCurve(root: Parent, { points }: ChanceCurve, { x, y, theme }: On): void {
  const at = (point: ChancePoint) => x(Number(point.at));
  const band = area<ChancePoint>(
    at,
    (point) => y(point.low),
    (point) => y(point.high),
  );
  root
    .append('path')
    .attr('class', 'band')
    .attr('d', band([...points]))
    .attr('fill', theme.palette[0]!)
    .attr('fill-opacity', 0.16);
  root
    .append('path')
    .attr('class', 'chance')
    .attr('d', line<ChancePoint>(at, (point) => y(point.chance))([...points]))
    .attr('fill', 'none')
    .attr('stroke', theme.palette[0]!)
    .attr('stroke-width', 1.6 * theme.lineWidth);
}

function drawLevels(root: Parent, { points }: ChanceCurve, { x, y, theme, place }: On): void {
  for (const point of points) {
    const across = x(place(point.at));
    root
      .append('line')
      .attr('class', 'band')
      .attr('x1', across)
      .attr('x2', across)
      .attr('y1', y(point.low))
      .attr('y2', y(point.high))
      .attr('stroke', theme.palette[0]!)
      .attr('stroke-width', 1.6 * theme.lineWidth);
    root
      .append('circle')
      .attr('class', 'chance')
      .attr('cx', across)
      .attr('cy', y(point.chance))
      .attr('r', 0.6 * theme.markSize)
      .attr('fill', theme.palette[0]!);
  }
}
