import { extent, type ScaleContinuousNumeric, scaleLinear, scaleLog } from 'd3';
import { bottomAxis, leftAxis, ticksFor } from './axes.ts';
import type { Box } from './box.ts';
import { chemical } from './chemical.ts';
import type { ShownGroup, ShownSample } from './chosen-samples.ts';
import type { Figure, Theme } from './figure.ts';
import { drawLegend, type LegendEntry, legendHeight } from './legend.ts';
import { colourOf } from './marks.ts';
import { newDrawing, type Parent } from './parts.ts';
import { logTicks } from './profile-ticks.ts';
import { drawSamples, samplesLegend } from './sample-marks.ts';

export interface PairData {
  readonly id: string;
  readonly title: string;
  /** Across, up. */
  readonly oxides: readonly [string, string];
  readonly axis: 'linear' | 'log';
  readonly samples: readonly ShownSample[];
  readonly groups: readonly ShownGroup[];
  /** wt% of the two in a sample. */
  readonly amounts: ReadonlyMap<string, readonly [number, number]>;
  /** Closed curves in wt%, each in its group's colour. */
  readonly ellipses: readonly {
    readonly slot: number;
    readonly curve: readonly (readonly [number, number])[];
  }[];
  readonly level: number;
}

/** Two oxides against each other, in wt%. */
export const pairPlot: Figure<PairData> = (data, at) => {
  const { width, height, theme } = at;
  const em = theme.fontSize;
  const { svg, root } = newDrawing({ id: data.id, title: data.title, description: describe(data) }, at);
  const legend = legendOf(data);
  const legendRoom = legendHeight(legend, width - 2 * em, theme);
  const plot = { left: 4.6 * em, top: 0.8 * em, right: width - em, bottom: height - legendRoom - 4.1 * em };
  const scales = scalesOf(data, plot);
  const inside = clipped(root, data.id, plot);
  for (const { slot, curve } of data.ellipses) {
    const dots = curve.map(([a, b]) => `${scales.x(a).toFixed(2)},${scales.y(b).toFixed(2)}`);
    inside
      .append('path')
      .attr('class', 'ellipse')
      .attr('d', `M${dots.join('L')}Z`)
      .attr('fill', colourOf(slot, theme))
      .attr('fill-opacity', 0.07)
      .attr('stroke', colourOf(slot, theme))
      .attr('stroke-width', theme.lineWidth);
  }
  drawSamples(inside, data.samples, {
    at: ({ id }) => ({ x: scales.x(data.amounts.get(id)![0]), y: scales.y(data.amounts.get(id)![1]) }),
    theme,
  });
  drawAxes(root, data, { plot, theme, ...scales });
  drawLegend(root, legend, { left: em, top: height - legendRoom - 0.4 * em, width: width - 2 * em, theme });
  return svg;
};

export const pairHeight = (data: PairData, width: number, theme: Theme): number => {
  const em = theme.fontSize;
  return Math.min(0.62 * width, 40 * em) + 5 * em + legendHeight(legendOf(data), width - 2 * em, theme);
};

type Scale = ScaleContinuousNumeric<number, number>;
interface Scales {
  readonly x: Scale;
  readonly y: Scale;
}

function scalesOf({ axis, amounts, ellipses }: PairData, plot: Box): Scales {
  const points = [...amounts.values(), ...ellipses.flatMap(({ curve }) => curve)];
  const scale = (at: 0 | 1, range: readonly [number, number]) => {
    const values = points.map((point) => point[at]).filter((value) => axis === 'linear' || value > 0);
    const [low = 0, high = 1] = extent(values) as [number | undefined, number | undefined];
    if (axis === 'log') {
      const margin = Math.max((high / low) ** 0.05, 1.02);
      return scaleLog([low / margin, high * margin], range) as Scale;
    }
    const margin = 0.05 * (high - low) || 0.5;
    return scaleLinear([Math.max(0, low - margin), high + margin], range) as Scale;
  };
  return { x: scale(0, [plot.left, plot.right]), y: scale(1, [plot.bottom, plot.top]) };
}

function drawAxes(
  root: Parent,
  { oxides, axis }: PairData,
  { plot, theme, x, y }: Scales & { plot: Box; theme: Theme },
): void {
  const title = (oxide: string) =>
    `${chemical(oxide)}, wt% of the oxides compared${axis === 'log' ? ' (log scale)' : ''}`;
  const ticks = (scale: Scale, most: number) =>
    axis === 'log' ? logTicks(scale.domain() as [number, number], most) : most;
  const format = axis === 'log' ? { format: (value: number) => String(Number(value.toPrecision(6))) } : {};
  const across = ticks(x, ticksFor(plot.right - plot.left, theme));
  const up = ticks(y, ticksFor(plot.bottom - plot.top, theme, 4));
  bottomAxis(root, x, { plot, theme, title: title(oxides[0]), ticks: across, ...format });
  leftAxis(root, y, { plot, theme, title: title(oxides[1]), ticks: up, ...format });
}

function clipped(root: Parent, id: string, plot: Box): Parent {
  root
    .append('clipPath')
    .attr('id', `${id}-clip`)
    .append('rect')
    .attr('x', plot.left)
    .attr('y', plot.top)
    .attr('width', plot.right - plot.left)
    .attr('height', plot.bottom - plot.top);
  return root.append('g').attr('clip-path', `url(#${id}-clip)`);
}

function legendOf({ groups, samples, ellipses, level }: PairData): LegendEntry[] {
  const words = `Where ${Math.round(1000 * level) / 10} % of new members would lie`;
  return [
    ...samplesLegend(groups, samples),
    ...(ellipses.length > 0 ? [{ kind: 'ellipse' as const, text: words }] : []),
  ];
}

const describe = ({ oxides, samples, axis }: PairData) =>
  `${oxides[1]} against ${oxides[0]} of ${samples.length} specimens, ${axis === 'log' ? 'logarithmic' : 'linear'} scales.`;
