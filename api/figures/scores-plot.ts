import { bottomAxis, leftAxis, ticksFor } from './axes.ts';
import type { Figure } from './figure.ts';
import { drawLegend } from './legend.ts';
import { colourOf } from './marks.ts';
import { newDrawing, type Parent } from './parts.ts';
import type { ScoresData } from './scores-data.ts';
import { type ScoresLayout, scoresLayout } from './scores-layout.ts';
import { drawLoadings } from './scores-loadings.ts';
import { dotsInSight, drawEllipse, drawReferences, drawReplica, inOrder, type On } from './scores-marks.ts';
import { drawNames } from './scores-names.ts';
import { numeral } from './text.ts';

/** Scores on two components: reference sherds by ware group, their ellipses, and the replicas among them. */
export const scoresPlot: Figure<ScoresData> = (data, at) => {
  const layout = scoresLayout(data, at);
  const heading = { id: data.id, title: data.title, description: describe(data) };
  const { svg, root } = newDrawing(heading, at);
  const on = { layout, theme: at.theme, dots: dotsInSight(data, { layout, theme: at.theme }) };
  drawAxes(root, data, on);
  const inside = clipped(root, data.id, layout);
  for (const group of data.groups)
    if (group.ellipse !== null)
      drawEllipse(inside, group.ellipse, { ...on, stroke: colourOf(group.slot, at.theme) });
  drawReferences(inside, data, on);
  drawLoadings(inside, data, on);
  for (const replica of inOrder(data.replicas)) drawReplica(inside, replica, on);
  drawNames(inside, data, on);
  const em = at.theme.fontSize;
  const legendAt = { left: em, top: layout.legendTop, width: at.width - 2 * em, theme: at.theme };
  drawLegend(root, layout.legend, legendAt);
  return svg;
};

function describe(data: ScoresData): string {
  const groups = data.groups.map(({ name, n }) => `${name} (${n})`).join(', ');
  const replicas = data.replicas.map(({ label }) => label).join(', ');
  return `Reference groups: ${groups || 'none'}. Replicas: ${replicas || 'none'}. ${axisTitle(data, 0)} across, ${axisTitle(data, 1)} up.`;
}

/** `PC1 · 62.4 % of the variance`. */
export const axisTitle = (data: ScoresData, axis: 0 | 1): string =>
  `PC${data.components[axis] + 1} · ${numeral(100 * data.explained[axis], 1)} % of the variance`;

function drawAxes(root: Parent, data: ScoresData, { layout, theme }: On): void {
  const { plot, x, y } = layout;
  for (const [x1, y1, x2, y2] of [
    [x(0), plot.top, x(0), plot.bottom],
    [plot.left, y(0), plot.right, y(0)],
  ] as const) {
    const seen = x1 >= plot.left && x2 <= plot.right && y1 >= plot.top && y2 <= plot.bottom;
    if (seen)
      root
        .append('line')
        .attr('class', 'origin')
        .attr('x1', x1)
        .attr('y1', y1)
        .attr('x2', x2)
        .attr('y2', y2)
        .attr('stroke', theme.grid)
        .attr('stroke-width', theme.lineWidth);
  }
  const look = { plot, theme };
  const across = ticksFor(plot.right - plot.left, theme);
  const up = ticksFor(plot.bottom - plot.top, theme, 4);
  bottomAxis(root, x, { ...look, title: axisTitle(data, 0), ticks: across });
  leftAxis(root, y, { ...look, title: axisTitle(data, 1), ticks: up });
}

function clipped(root: Parent, id: string, { plot }: ScoresLayout): Parent {
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
