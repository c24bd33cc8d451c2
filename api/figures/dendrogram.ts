import { scaleLinear } from 'd3';
import { bottomAxis, ticksFor } from './axes.ts';
import type { ShownSample } from './chosen-samples.ts';
import type { DistancesData } from './distances-data.ts';
import type { Figure, Theme } from './figure.ts';
import { drawLegend, legendHeight } from './legend.ts';
import { newDrawing, type Parent } from './parts.ts';
import { drawSamples, samplesLegend } from './sample-marks.ts';
import { fitText, textWidth } from './text.ts';

const ROW = 1.15;

export const dendrogramHeight = (data: DistancesData, width: number, theme: Theme): number => {
  const em = theme.fontSize;
  const legend = legendHeight(samplesLegend(data.groups, data.samples), width - 2 * em, theme);
  return data.samples.length * ROW * em + 5 * em + legend;
};

/** Whether each specimen can be named, on a sheet this high. */
export const namesFit = (data: DistancesData, at: { width: number; height: number; theme: Theme }): boolean =>
  layoutOf(data, at).each >= 1.05 * at.theme.fontSize;

/** A tree of what is like what: the further right two branches join, the less alike they are. */
export const dendrogram: Figure<DistancesData> = (data, at) => {
  const { width, theme } = at;
  const em = theme.fontSize;
  const { svg, root } = newDrawing({ id: data.id, title: data.title, description: describe(data) }, at);
  const { plot, each, names, legend, legendTop } = layoutOf(data, at);
  const { joins, order } = data.clustering;
  const top = joins.at(-1)!.height;
  const x = scaleLinear([0, 1.02 * top || 1], [plot.left, plot.right]);
  const rows = new Map(order.map((item, row) => [item, plot.top + (row + 0.5) * each]));
  root
    .append('path')
    .attr('class', 'branches')
    .attr('d', branches(data, { x, rows }))
    .attr('fill', 'none')
    .attr('stroke', theme.faint)
    .attr('stroke-width', theme.lineWidth);
  const mark = plot.left - 0.7 * em;
  const place = new Map(data.samples.map(({ id }, item) => [id, { x: mark, y: rows.get(item)! }]));
  const scale = Math.min(0.8, (0.9 * each) / theme.markSize);
  drawSamples(root, data.samples, { at: ({ id }) => place.get(id)!, theme, scale });
  if (names > 0)
    data.samples.forEach((sample, item) => {
      write(root, sample, { x: mark - 0.8 * em, y: rows.get(item)! + 0.34 * em, room: names, theme });
    });
  const title = `${data.unit}, ${data.linkage === 'ward' ? 'joined by Ward’s criterion' : 'joined by average linkage'}`;
  bottomAxis(root, x, { plot, theme, title, ticks: ticksFor(plot.right - plot.left, theme) });
  drawLegend(root, legend, { left: em, top: legendTop, width: width - 2 * em, theme });
  return svg;
};

function layoutOf(data: DistancesData, at: { width: number; height: number; theme: Theme }) {
  const { width, height, theme } = at;
  const em = theme.fontSize;
  const legend = samplesLegend(data.groups, data.samples);
  const legendRoom = legendHeight(legend, width - 2 * em, theme);
  const [top, bottom] = [0.4 * em, height - legendRoom - 4.1 * em];
  const each = (bottom - top) / data.samples.length;
  const widest = Math.max(...data.samples.map(({ label }) => textWidth(label, em)));
  const names = each >= 1.05 * em ? Math.min(widest, 0.3 * width) : 0;
  const plot = { left: names + (names > 0 ? 2.4 : 1.8) * em, right: width - 1.2 * em, top, bottom };
  return { plot, each, names, legend, legendTop: height - legendRoom - 0.4 * em };
}

interface Grid {
  readonly x: (height: number) => number;
  /** px of an item, and as it goes of a join. */
  readonly rows: Map<number, number>;
}

function branches({ samples, clustering }: DistancesData, { x, rows }: Grid): string {
  const heights = new Map<number, number>();
  const px = (value: number) => Math.round(value * 100) / 100;
  return clustering.joins
    .map(({ pair: [one, other], height }, k) => {
      const [y1, y2] = [rows.get(one)!, rows.get(other)!];
      const [from1, from2] = [x(heights.get(one) ?? 0), x(heights.get(other) ?? 0)];
      rows.set(samples.length + k, (y1 + y2) / 2);
      heights.set(samples.length + k, height);
      return `M${px(from1)},${px(y1)}H${px(x(height))}V${px(y2)}H${px(from2)}`;
    })
    .join('');
}

function write(
  root: Parent,
  { label, chosen, slot }: ShownSample,
  { x, y, room, theme }: { x: number; y: number; room: number; theme: Theme },
): void {
  root
    .append('text')
    .attr('x', x)
    .attr('y', y)
    .attr('text-anchor', 'end')
    .attr('font-weight', chosen ? 600 : null)
    .attr('fill', slot === null ? theme.ink : theme.faint)
    .text(fitText(label, theme.fontSize, room));
}

function describe({ samples, clustering, unit }: DistancesData): string {
  return `From top to bottom: ${clustering.order.map((item) => samples[item]!.label).join(', ')}. ${unit} from left to right.`;
}
