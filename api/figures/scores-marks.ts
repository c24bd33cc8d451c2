import { line } from 'd3';
import type { Theme } from './figure.ts';
import { colourOf, markOf, marksPath } from './marks.ts';
import { type Parent, replicaMark } from './parts.ts';
import type { ScoresData, ScoresEllipse, ScoresReplica } from './scores-data.ts';
import type { ScoresLayout } from './scores-layout.ts';

export interface On {
  readonly layout: ScoresLayout;
  readonly theme: Theme;
}

export function drawEllipse(
  parent: Parent,
  { centre, semiAxes, angle }: ScoresEllipse,
  look: On & { readonly stroke: string; readonly dashed?: boolean },
): void {
  const { x, y } = look.layout;
  const unit = x(1) - x(0);
  parent
    .append('ellipse')
    .attr('rx', semiAxes[0] * unit)
    .attr('ry', semiAxes[1] * unit)
    .attr('transform', `translate(${x(centre[0])},${y(centre[1])}) rotate(${(-angle * 180) / Math.PI})`)
    .attr('fill', look.stroke)
    .attr('fill-opacity', 0.07)
    .attr('stroke', look.stroke)
    .attr('stroke-width', look.theme.lineWidth)
    .attr('stroke-dasharray', look.dashed ? `${3 * look.theme.lineWidth}` : null);
}

/** One path a group, so that five thousand sherds are a dozen nodes. */
export function drawReferences(parent: Parent, data: ScoresData, { layout, theme }: On): void {
  const { x, y, plot } = layout;
  const reach = 2 * theme.markSize;
  for (const group of data.groups) {
    const dots = group.points
      .map((point) => ({ x: x(point.x), y: y(point.y) }))
      .filter(
        (dot) =>
          dot.x > plot.left - reach &&
          dot.x < plot.right + reach &&
          dot.y > plot.top - reach &&
          dot.y < plot.bottom + reach,
      );
    parent
      .append('path')
      .attr('class', 'references')
      .attr('d', marksPath(markOf(group.slot), theme.markSize, dots))
      .attr('fill', colourOf(group.slot, theme));
  }
}

/** The chosen one last, so that nothing covers it. */
export const inOrder = (replicas: readonly ScoresReplica[]): ScoresReplica[] =>
  [...replicas].sort((one, other) => Number(one.chosen) - Number(other.chosen));

export function drawReplica(parent: Parent, replica: ScoresReplica, { layout, theme }: On): void {
  const { x, y } = layout;
  const colour = replica.chosen ? theme.accent : theme.ink;
  const dots = (replica.cloud ?? []).map(([across, up]) => ({ x: x(across), y: y(up) }));
  if (dots.length > 0)
    parent
      .append('path')
      .attr('class', 'cloud')
      .attr('d', marksPath('square', 0.28 * theme.markSize, dots))
      .attr('fill', colour)
      .attr('fill-opacity', 0.25);
  if (replica.ellipse) drawEllipse(parent, replica.ellipse, { layout, theme, stroke: colour, dashed: true });
  if (replica.path)
    parent
      .append('path')
      .attr('class', 'way')
      .attr(
        'd',
        line<readonly [number, number]>(
          ([across]) => x(across),
          ([, up]) => y(up),
        )(replica.path),
      )
      .attr('fill', 'none')
      .attr('stroke', colour)
      .attr('stroke-width', 1.3 * theme.lineWidth);
  replicaMark(parent, { x: x(replica.x), y: y(replica.y) }, { theme, chosen: replica.chosen });
}
