import { type ScaleLinear, scaleLinear } from 'd3';
import { bottomAxis, ticksFor } from './axes.ts';
import type { Box } from './box.ts';
import { chemical } from './chemical.ts';
import type { Figure, Theme } from './figure.ts';
import type { LoadingsData } from './loadings-data.ts';
import { newDrawing, type Parent } from './parts.ts';
import { numeral, textWidth } from './text.ts';

const ROW = 1.9;

/** px the figure wants for all its oxides. */
export const loadingsHeight = (data: LoadingsData, _width: number, theme: Theme): number =>
  (data.parts.length * ROW + 4.6) * theme.fontSize;

/** One bar an oxide and component, to the right of the middle where it pulls that way, to the left else. */
export const loadingsPlot: Figure<LoadingsData> = (data, at) => {
  const { width, height, theme } = at;
  const em = theme.fontSize;
  const { svg, root } = newDrawing({ id: data.id, title: data.title, description: describe(data) }, at);
  const left = Math.max(...data.parts.map((part) => textWidth(chemical(part), em)), em) + 1.4 * em;
  const room = (width - left - 0.8 * em) / data.panels.length;
  const reach = Math.max(...data.panels.flatMap(({ values }) => values.map(Math.abs)), 0.1);
  data.panels.forEach((panel, i) => {
    const plot = {
      left: left + i * room,
      right: left + (i + 1) * room - 1.2 * em,
      top: 0.6 * em,
      bottom: height - 3.6 * em,
    };
    const x = scaleLinear([-1.04 * reach, 1.04 * reach], [plot.left, plot.right]);
    const title = `PC${panel.component + 1} · ${numeral(100 * panel.explained, 1)} % of the variance`;
    drawPanel(root, panel.values, { plot, x, theme, title });
  });
  const each = (height - 4.2 * em) / Math.max(1, data.parts.length);
  data.parts.forEach((part, row) => {
    root
      .append('text')
      .attr('x', left - 0.7 * em)
      .attr('y', 0.6 * em + (row + 0.5) * each + 0.34 * em)
      .attr('text-anchor', 'end')
      .attr('fill', theme.ink)
      .text(chemical(part));
  });
  return svg;
};

interface Panel {
  readonly plot: Box;
  readonly x: ScaleLinear<number, number>;
  readonly theme: Theme;
  readonly title: string;
}

function drawPanel(root: Parent, values: readonly number[], { plot, x, theme, title }: Panel): void {
  const each = (plot.bottom - plot.top) / Math.max(1, values.length);
  const group = root.append('g').attr('class', 'panel');
  values.forEach((value, row) => {
    group
      .append('rect')
      .attr('class', 'bar')
      .attr('data-value', value)
      .attr('x', Math.min(x(0), x(value)))
      .attr('y', plot.top + (row + 0.2) * each)
      .attr('width', Math.abs(x(value) - x(0)))
      .attr('height', 0.6 * each)
      .attr('fill', value < 0 ? theme.faint : theme.palette[0]!);
  });
  group
    .append('line')
    .attr('x1', x(0))
    .attr('x2', x(0))
    .attr('y1', plot.top)
    .attr('y2', plot.bottom)
    .attr('stroke', theme.ink)
    .attr('stroke-width', theme.lineWidth);
  bottomAxis(group, x, { plot, theme, title, ticks: ticksFor(plot.right - plot.left, theme, 4) });
}

function describe(data: LoadingsData): string {
  return data.panels
    .map(
      ({ component, values }) =>
        `PC${component + 1}: ${data.parts.map((part, i) => `${part} ${numeral(values[i]!, 2)}`).join(', ')}.`,
    )
    .join(' ');
}
