import { bottomAxis } from './axes.ts';
import type { Box } from './box.ts';
import { chemical } from './chemical.ts';
import type { Figure, Theme } from './figure.ts';
import { drawLegend } from './legend.ts';
import { colourOf } from './marks.ts';
import { newDrawing, type Parent } from './parts.ts';
import type { ProfileData } from './profile-data.ts';
import { howFarOff, profileLayout } from './profile-layout.ts';
import { drawSpread, drawValues } from './profile-rows.ts';
import { logTicks } from './profile-ticks.ts';

/** Oxide by oxide: where the group's sherds lie, and where the replicas; the oxide furthest off first. */
export const oxideProfile: Figure<ProfileData> = (data, at) => {
  const { width, theme } = at;
  const { plot, x, legend, legendTop, rowHeight } = profileLayout(data, at);
  const { svg, root } = newDrawing({ id: data.id, title: data.title, description: describe(data) }, at);
  const ticks = logTicks(x.domain() as [number, number], (plot.right - plot.left) / (4.2 * theme.fontSize));
  drawGrid(
    root,
    ticks.map((tick) => x(tick)),
    { plot, theme, strong: data.basis === 'ratio' ? x(1) : null },
  );
  const colour = colourOf(data.group.slot, theme);
  data.rows.forEach((row, i) => {
    const line = { x, y: plot.top + (i + 0.5) * rowHeight, rowHeight, theme };
    const words = root.append('g').attr('class', 'row').attr('data-oxide', row.oxide);
    write(words, chemical(row.oxide), {
      x: plot.left - 0.6 * theme.fontSize,
      y: line.y,
      anchor: 'end',
      theme,
    });
    drawSpread(words, row.spread, { ...line, colour });
    drawValues(words, data, { row, line });
    if (row.factor !== null)
      write(words, howFarOff(row.factor), {
        x: plot.right + 0.8 * theme.fontSize,
        y: line.y,
        anchor: 'start',
        theme,
      });
  });
  const format = (value: number) => (data.basis === 'ratio' ? `${plain(value)}×` : plain(value));
  bottomAxis(root, x, { plot, theme, title: AXIS[data.basis], ticks, format });
  const em = theme.fontSize;
  drawLegend(root, legend, { left: em, top: legendTop, width: width - 2 * em, theme });
  return svg;
};

const AXIS = {
  ratio: 'Times the group’s centre (log scale)',
  amount: 'wt% of the oxides compared (log scale)',
} as const;

const plain = (value: number): string => String(Number(value.toPrecision(6)));

function drawGrid(
  root: Parent,
  places: readonly number[],
  { plot, theme, strong }: { readonly plot: Box; readonly theme: Theme; readonly strong: number | null },
): void {
  const upright = (px: number, colour: string) =>
    root
      .append('line')
      .attr('x1', px)
      .attr('x2', px)
      .attr('y1', plot.top)
      .attr('y2', plot.bottom)
      .attr('stroke', colour)
      .attr('stroke-width', theme.lineWidth * 0.8);
  for (const px of places) upright(px, theme.grid);
  if (strong !== null) upright(strong, theme.faint).attr('class', 'centre');
}

function write(
  parent: Parent,
  text: string,
  at: { readonly x: number; readonly y: number; readonly anchor: 'start' | 'end'; readonly theme: Theme },
): void {
  parent
    .append('text')
    .attr('x', at.x)
    .attr('y', at.y + 0.34 * at.theme.fontSize)
    .attr('text-anchor', at.anchor)
    .attr('fill', at.theme.ink)
    .text(text);
}

function describe(data: ProfileData): string {
  const rows = data.rows.map(({ oxide, factor }) =>
    factor === null ? oxide : `${oxide} ${howFarOff(factor)}`,
  );
  return `Against ${data.group.name} (${data.group.n} sherds): ${rows.join(', ')}.`;
}
