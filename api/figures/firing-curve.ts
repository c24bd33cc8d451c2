import { scaleLinear } from 'd3';
import { bottomAxis, leftAxis, ticksFor } from './axes.ts';
import type { At, Figure, Theme } from './figure.ts';
import type { FiringCurveData } from './firing-curve-data.ts';
import { drawGaps, drawMarks, drawStages } from './firing-curve-ground.ts';
import { drawChannels } from './firing-curve-lines.ts';
import type { On } from './firing-curve-look.ts';
import { drawPeaks, drawReadings } from './firing-curve-points.ts';
import { describeFiring } from './firing-curve-words.ts';
import { newDrawing } from './parts.ts';
import { textWidth } from './text.ts';

/** From here on the axis counts hours. */
const LONG = 5 * 3600;

export const firingCurveHeight = (_: FiringCurveData, width: number, theme: Theme): number =>
  Math.max(22 * theme.fontSize, 0.42 * width);

/**
 * Temperature against time: each channel by colour and dash with its name at its line, its peak with its error, spikes,
 * gaps, readings by hand with what their error leaves open, chosen temperatures across, stages of air above.
 */
export const firingCurve: Figure<FiringCurveData> = (data, at) => {
  const title = `Temperature of ${data.name}`;
  const { svg, root } = newDrawing({ id: data.id, title, description: describeFiring(data) }, at);
  const on = layoutOf(data, at);
  drawStages(root, data, on);
  drawGaps(root, data, on);
  drawMarks(root, data, on);
  const look = { plot: on.plot, theme: at.theme };
  const across = ticksFor(on.plot.right - on.plot.left, at.theme);
  const unit = on.unit === 60 ? 'Minutes' : 'Hours';
  bottomAxis(root, on.x, { ...look, title: `${unit} since the fire was lit`, ticks: across });
  leftAxis(root, on.y, { ...look, title: '°C', ticks: 6 });
  drawChannels(root, data, on);
  drawPeaks(root, data, on);
  drawReadings(root, data, on);
  return svg;
};

function layoutOf(data: FiringCurveData, { width, height, theme }: At): On {
  const { stages, curves, readings } = data;
  const em = theme.fontSize;
  const names = curves.map((one) => textWidth(one.name, 0.95 * em, 'semibold'));
  const label = Math.min(Math.max(0, ...names), 0.22 * width);
  const plot = {
    ...{ left: 4.4 * em, top: 2.4 * em, bottom: height - 4 * em },
    right: width - (label > 0 ? label + 2.4 * em : 1.2 * em),
  };
  const points = curves.flatMap((one) => [one.points[0], one.points.at(-1)].filter((p) => p !== undefined));
  const times = [...points, ...readings].map((p) => p.seconds);
  const end = [...times, ...stages.map((s) => s.to)].reduce((a, b) => Math.max(a, b), 60);
  const start = times.reduce((a, b) => Math.min(a, b), 0);
  const unit = end - start >= LONG ? 3600 : 60;
  const tops = [
    ...curves.map((one) => one.points.reduce((top, p) => Math.max(top, p.celsius), 0)),
    ...curves.map((one) => one.peak?.high ?? 0),
    ...readings.map((r) => r.bounds.high),
  ];
  const top = tops.reduce((a, b) => Math.max(a, b), 100);
  const headroom = curves.some((one) => one.peak) ? 1.14 : 1.05;
  return {
    ...{ plot, theme, unit, label },
    x: scaleLinear([start / unit, end / unit], [plot.left, plot.right]),
    y: scaleLinear([0, headroom * top], [plot.bottom, plot.top]),
  };
}
