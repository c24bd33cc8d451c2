import { line, scaleLinear } from 'd3';
import type { AirStage, Bounded, CurvePoint } from '../domain/firing/types.ts';
import { bottomAxis, leftAxis, ticksFor } from './axes.ts';
import type { At, Figure, Theme } from './figure.ts';
import { newDrawing, type Parent } from './parts.ts';
import { fitText, numeral } from './text.ts';

export interface FiringCurveData {
  readonly id: string;
  readonly name: string;
  readonly stages: readonly AirStage[];
  /** Thinned thermocouple curves; empty where only hand readings were taken. */
  readonly curves: readonly { readonly name: string; readonly points: readonly CurvePoint[] }[];
  readonly readings: readonly {
    readonly seconds: number;
    readonly bounds: Bounded;
    readonly where: string;
  }[];
  /** Temperatures worth a line across, °C. */
  readonly marks: readonly number[];
}
export const firingCurveHeight = (_: FiringCurveData, width: number, theme: Theme): number =>
  Math.max(22 * theme.fontSize, 0.42 * width);

/** Temperature against time: curves, readings by hand with what their error leaves open, stages of air above. */
export const firingCurve: Figure<FiringCurveData> = (data, at) => {
  const title = `Temperature of ${data.name}`;
  const { svg, root } = newDrawing({ id: data.id, title, description: describe(data) }, at);
  const on = layoutOf(data, at);
  drawStages(root, data, on);
  drawMarks(root, data, on);
  const look = { plot: on.plot, theme: at.theme };
  const across = ticksFor(on.plot.right - on.plot.left, at.theme);
  bottomAxis(root, on.x, { ...look, title: 'Minutes since the fire was lit', ticks: across });
  leftAxis(root, on.y, { ...look, title: '°C', ticks: 6 });
  drawCurves(root, data, on);
  drawReadings(root, data, on);
  return svg;
};

interface On {
  readonly plot: { left: number; top: number; right: number; bottom: number };
  readonly x: ReturnType<typeof scaleLinear<number>>;
  readonly y: ReturnType<typeof scaleLinear<number>>;
  readonly theme: Theme;
}

function layoutOf({ stages, curves, readings }: FiringCurveData, { width, height, theme }: At): On {
  const em = theme.fontSize;
  const plot = { left: 4.4 * em, top: 2.4 * em, right: width - 1.2 * em, bottom: height - 4 * em };
  const points = curves.flatMap((one) => one.points);
  const ends = [
    ...points.map((p) => p.seconds),
    ...readings.map((r) => r.seconds),
    ...stages.map((s) => s.to),
  ];
  const tops = [...points.map((p) => p.celsius), ...readings.map((r) => r.bounds.high)];
  const x = scaleLinear([0, Math.max(60, ...ends) / 60], [plot.left, plot.right]);
  return { plot, theme, x, y: scaleLinear([0, 1.05 * Math.max(100, ...tops)], [plot.bottom, plot.top]) };
}

function describe({ stages, readings }: FiringCurveData): string {
  const hottest = readings.reduce<(typeof readings)[number] | null>(
    (best, one) => (best === null || one.bounds.value > best.bounds.value ? one : best),
    null,
  );
  const peak =
    hottest === null
      ? 'No reading by hand.'
      : `Hottest reading by hand ${numeral(hottest.bounds.value, 0)} °C (${numeral(hottest.bounds.low, 0)} to ${numeral(hottest.bounds.high, 0)}) at minute ${numeral(hottest.seconds / 60, 0)}.`;
  const air = stages.map((s) => `${s.air} to minute ${numeral(s.to / 60, 0)}`).join(', ');
  return air ? `${peak} Air: ${air}.` : peak;
}

/** Stages of air as strips above the plot, named; a faint edge shows where one ends. */
function drawStages(root: Parent, { stages }: FiringCurveData, { plot, x, theme }: On): void {
  const em = theme.fontSize;
  for (const stage of stages) {
    const [from, to] = [x(stage.from / 60), x(stage.to / 60)];
    const item = root.append('g').attr('class', 'stage');
    item
      .append('line')
      .attr('x1', to)
      .attr('x2', to)
      .attr('y1', plot.top - 1.6 * em)
      .attr('y2', plot.bottom)
      .attr('stroke', theme.grid)
      .attr('stroke-width', theme.lineWidth);
    item
      .append('text')
      .attr('x', (from + to) / 2)
      .attr('y', plot.top - 0.6 * em)
      .attr('text-anchor', 'middle')
      .attr('fill', theme.faint)
      .text(fitText(stage.air, em, to - from - 0.5 * em));
  }
}

function drawMarks(root: Parent, { marks }: FiringCurveData, { plot, y, theme }: On): void {
  const top = y.domain()[1]!;
  for (const mark of marks.filter((celsius) => celsius < top))
    root
      .append('line')
      .attr('class', 'mark')
      .attr('x1', plot.left)
      .attr('x2', plot.right)
      .attr('y1', y(mark))
      .attr('y2', y(mark))
      .attr('stroke', theme.grid)
      .attr('stroke-width', theme.lineWidth);
}

function drawCurves(root: Parent, { curves }: FiringCurveData, { x, y, theme }: On): void {
  curves.forEach(({ points }, slot) => {
    const path = line<CurvePoint>(
      (p) => x(p.seconds / 60),
      (p) => y(p.celsius),
    );
    root
      .append('path')
      .attr('class', 'curve')
      .attr('d', path([...points]))
      .attr('fill', 'none')
      .attr('stroke', theme.palette[slot % theme.palette.length]!)
      .attr('stroke-width', 1.4 * theme.lineWidth);
  });
}

function drawReadings(root: Parent, { readings }: FiringCurveData, { x, y, theme }: On): void {
  for (const { seconds, bounds, where } of readings) {
    const across = x(seconds / 60);
    const item = root.append('g').attr('class', 'reading');
    item
      .append('line')
      .attr('x1', across)
      .attr('x2', across)
      .attr('y1', y(bounds.low))
      .attr('y2', y(bounds.high))
      .attr('stroke', theme.accent)
      .attr('stroke-width', 1.4 * theme.lineWidth);
    item
      .append('circle')
      .attr('cx', across)
      .attr('cy', y(bounds.value))
      .attr('r', 0.42 * theme.markSize)
      .attr('fill', theme.accent)
      .append('title')
      .text(
        `${numeral(bounds.value, 0)} °C (${numeral(bounds.low, 0)} to ${numeral(bounds.high, 0)})${where ? `, ${where}` : ''}`,
      );
  }
}
