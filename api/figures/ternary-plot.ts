import { chemical } from './chemical.ts';
import type { ShownGroup, ShownSample } from './chosen-samples.ts';
import type { Figure, Theme } from './figure.ts';
import { drawLegend, legendHeight } from './legend.ts';
import type { Dot } from './marks.ts';
import { newDrawing, type Parent } from './parts.ts';
import { drawSamples, samplesLegend } from './sample-marks.ts';

export interface TernaryData {
  readonly id: string;
  readonly title: string;
  /** At the top, at the lower left, at the lower right. */
  readonly oxides: readonly [string, string, string];
  readonly samples: readonly ShownSample[];
  readonly groups: readonly ShownGroup[];
  /** Shares of the three for a sample, summing to 1. */
  readonly shares: ReadonlyMap<string, readonly [number, number, number]>;
}
const STEPS = [0.2, 0.4, 0.6, 0.8];
type Shares = readonly [number, number, number];

/** Three oxides closed to 100 of themselves: the nearer a corner, the more of its oxide. */
export const ternaryPlot: Figure<TernaryData> = (data, at) => {
  const { width, height, theme } = at;
  const em = theme.fontSize;
  const { svg, root } = newDrawing({ id: data.id, title: data.title, description: describe(data) }, at);
  const legend = samplesLegend(data.groups, data.samples);
  const legendRoom = legendHeight(legend, width - 2 * em, theme);
  const place = triangle({ width, height: height - legendRoom - 0.8 * em, theme });
  drawFrame(root, data, { place, theme });
  drawSamples(root, data.samples, { at: ({ id }) => place(data.shares.get(id)!), theme });
  drawLegend(root, legend, { left: em, top: height - legendRoom - 0.4 * em, width: width - 2 * em, theme });
  return svg;
};

export const ternaryHeight = (data: TernaryData, width: number, theme: Theme): number => {
  const em = theme.fontSize;
  const legend = samplesLegend(data.groups, data.samples);
  return 0.87 * Math.min(width - 6 * em, 46 * em) + 6 * em + legendHeight(legend, width - 2 * em, theme);
};

/** Shares → px on the largest triangle with sides alike that leaves room for its corners' names. */
function triangle(at: { width: number; height: number; theme: Theme }): (shares: Shares) => Dot {
  const em = at.theme.fontSize;
  const up = at.height - 4.4 * em;
  const side = Math.min(at.width - 6 * em, up / (Math.sqrt(3) / 2));
  const [left, bottom] = [(at.width - side) / 2, 2 * em + up];
  return ([top, , right]) => ({
    x: left + side * (right + top / 2),
    y: bottom - (side * top * Math.sqrt(3)) / 2,
  });
}

interface Frame {
  readonly place: (shares: Shares) => Dot;
  readonly theme: Theme;
}

function drawFrame(root: Parent, { oxides }: TernaryData, { place, theme }: Frame): void {
  const em = theme.fontSize;
  const line = (from: Dot, to: Dot, colour: string) =>
    root
      .append('line')
      .attr('x1', from.x)
      .attr('y1', from.y)
      .attr('x2', to.x)
      .attr('y2', to.y)
      .attr('stroke', colour)
      .attr('stroke-width', theme.lineWidth * 0.8);
  const text = (words: string, dot: Dot, look: { anchor: string; colour: string; weight?: number }) =>
    root
      .append('text')
      .attr('x', dot.x)
      .attr('y', dot.y)
      .attr('text-anchor', look.anchor)
      .attr('font-weight', look.weight ?? null)
      .attr('fill', look.colour)
      .text(words);
  const faint = theme.faint;
  for (const t of STEPS) {
    line(place([t, 1 - t, 0]), place([t, 0, 1 - t]), theme.grid);
    line(place([1 - t, t, 0]), place([0, t, 1 - t]), theme.grid);
    line(place([1 - t, 0, t]), place([0, 1 - t, t]), theme.grid);
    const percent = String(Math.round(100 * t));
    const [right, left, low] = [place([t, 0, 1 - t]), place([1 - t, t, 0]), place([0, 1 - t, t])];
    text(percent, { x: right.x + 0.5 * em, y: right.y + 0.1 * em }, { anchor: 'start', colour: faint });
    text(percent, { x: left.x - 0.5 * em, y: left.y + 0.1 * em }, { anchor: 'end', colour: faint });
    text(percent, { x: low.x, y: low.y + 1.3 * em }, { anchor: 'middle', colour: faint });
  }
  const [top, left, right] = [place([1, 0, 0]), place([0, 1, 0]), place([0, 0, 1])];
  for (const [from, to] of [
    [top, left],
    [left, right],
    [right, top],
  ] as const)
    line(from, to, theme.ink);
  const strong = { colour: theme.ink, weight: 600, anchor: 'middle' };
  text(`${chemical(oxides[0])} %`, { x: top.x, y: top.y - 0.6 * em }, strong);
  text(`${chemical(oxides[1])} %`, { x: left.x, y: left.y + 1.4 * em }, strong);
  text(`${chemical(oxides[2])} %`, { x: right.x, y: right.y + 1.4 * em }, strong);
}

function describe({ oxides, samples }: TernaryData): string {
  return `${oxides.join(', ')} of ${samples.length} specimens, closed to 100 of the three.`;
}
