import { interpolateLab, scaleLinear } from 'd3';
import type { DistancesData } from './distances-data.ts';
import type { Figure, Theme } from './figure.ts';
import { drawLegend, legendHeight } from './legend.ts';
import { newDrawing, type Parent } from './parts.ts';
import { drawSamples, samplesLegend } from './sample-marks.ts';
import { numeral } from './text.ts';

/** Steps from alike to unlike; one hue that only darkens (or lightens), so that it reads without colour. */
export const SHADES = 16;

export const heatMapHeight = (data: DistancesData, width: number, theme: Theme): number => {
  const em = theme.fontSize;
  const legend = legendHeight(samplesLegend(data.groups, data.samples), width - 2 * em, theme);
  return Math.min(width, 50 * em) + 5 * em + legend;
};

/** Every specimen against every other, in the order of their tree: the further from the background, the less alike. */
export const heatMap: Figure<DistancesData> = (data, at) => {
  const { width, height, theme } = at;
  const em = theme.fontSize;
  const { svg, root } = newDrawing({ id: data.id, title: data.title, description: describe(data) }, at);
  const legend = samplesLegend(data.groups, data.samples);
  const legendRoom = legendHeight(legend, width - 2 * em, theme);
  const n = data.samples.length;
  const side = Math.min(width - 3.4 * em, height - legendRoom - 6 * em);
  const [left, top] = [(width - side) / 2 + 0.7 * em, 1.8 * em];
  const cell = side / n;
  const most = Math.max(...data.distances) || 1;
  drawCells(root, data, { left, top, cell, most, theme });
  const { order } = data.clustering;
  const row = new Map(order.map((item, at) => [data.samples[item]!.id, (at + 0.5) * cell]));
  const scale = Math.min(0.7, (0.95 * cell) / theme.markSize);
  const along = { theme, scale };
  drawSamples(root, data.samples, {
    ...along,
    at: ({ id }) => ({ x: left - 0.8 * em, y: top + row.get(id)! }),
  });
  drawSamples(root, data.samples, {
    ...along,
    at: ({ id }) => ({ x: left + row.get(id)!, y: top - 0.8 * em }),
  });
  drawRamp(root, data, { left, top: top + side + 0.9 * em, width: side, most, theme });
  drawLegend(root, legend, { left: em, top: height - legendRoom - 0.4 * em, width: width - 2 * em, theme });
  return svg;
};

/** From the background to the ink through the theme's first colour. */
export function shadesOf(theme: Theme): string[] {
  const dark = scaleLinear<string>([0, 0.6, 1], [theme.background, theme.palette[0]!, theme.ink]).interpolate(
    interpolateLab,
  );
  return Array.from({ length: SHADES }, (_, i) => dark((i + 0.5) / SHADES));
}
const shadeOf = (distance: number, most: number) =>
  Math.min(SHADES - 1, Math.floor((SHADES * distance) / most));

/** One path a shade. */
function drawCells(
  root: Parent,
  { samples, clustering: { order }, distances }: DistancesData,
  { left, top, cell, most, theme }: { left: number; top: number; cell: number; most: number; theme: Theme },
): void {
  const n = samples.length;
  const paths = Array.from({ length: SHADES }, () => '');
  const px = (value: number) => Math.round(value * 100) / 100;
  order.forEach((one, row) => {
    order.forEach((other, column) => {
      const shade = shadeOf(distances[one * n + other]!, most);
      paths[shade] +=
        `M${px(left + column * cell)},${px(top + row * cell)}h${px(cell)}v${px(cell)}h${px(-cell)}z`;
    });
  });
  const shades = shadesOf(theme);
  paths.forEach((d, shade) => {
    if (d !== '')
      root
        .append('path')
        .attr('class', 'cells')
        .attr('data-shade', shade)
        .attr('d', d)
        .attr('fill', shades[shade]!)
        .attr('shape-rendering', 'crispEdges');
  });
}

function drawRamp(
  root: Parent,
  { unit }: DistancesData,
  at: { left: number; top: number; width: number; most: number; theme: Theme },
): void {
  const { left, top, width, most, theme } = at;
  const em = theme.fontSize;
  shadesOf(theme).forEach((shade, i) => {
    root
      .append('rect')
      .attr('class', 'ramp')
      .attr('x', left + (i * width) / SHADES)
      .attr('y', top)
      .attr('width', width / SHADES)
      .attr('height', 0.7 * em)
      .attr('fill', shade);
  });
  const text = (words: string, x: number, anchor: string) =>
    root
      .append('text')
      .attr('x', x)
      .attr('y', top + 1.9 * em)
      .attr('text-anchor', anchor)
      .attr('fill', theme.ink)
      .text(words);
  text('0', left, 'start');
  text(unit, left + width / 2, 'middle');
  text(numeral(most, 2), left + width, 'end');
}

function describe({ samples, clustering, unit }: DistancesData): string {
  return `${unit} between ${samples.length} specimens, in the order ${clustering.order.map((item) => samples[item]!.label).join(', ')}.`;
}
