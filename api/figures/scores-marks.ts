import { line } from 'd3';
import type { Theme } from './figure.ts';
import { colourOf, type Dot, markOf, marksPath } from './marks.ts';
import { type Parent, replicaMark } from './parts.ts';
import type { ScoresData, ScoresEllipse, ScoresReplica } from './scores-data.ts';
import type { ScoresLayout } from './scores-layout.ts';

export interface On {
  readonly layout: ScoresLayout;
  readonly theme: Theme;
  /** As `dotsInSight` gives them. */
  readonly dots: readonly (readonly Dot[])[];
}

export function drawEllipse(
  parent: Parent,
  { centre, semiAxes, angle }: ScoresEllipse,
  look: Pick<On, 'layout' | 'theme'> & { readonly stroke: string; readonly dashed?: boolean },
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

/** Px of each group's sherds that are in sight, group by group; worked out once, since there may be thousands. */
export function dotsInSight(data: ScoresData, { layout, theme }: Pick<On, 'layout' | 'theme'>): Dot[][] {
  const { x, y, plot } = layout;
  const reach = 2 * theme.markSize;
  const [left, right, top, bottom] = [
    plot.left - reach,
    plot.right + reach,
    plot.top - reach,
    plot.bottom + reach,
  ];
  const [fromX, unitX] = [x(0), x(1) - x(0)];
  const [fromY, unitY] = [y(0), y(1) - y(0)];
  return data.groups.map(({ points }) => {
    const dots: Dot[] = [];
    for (const point of points) {
      const dot = { x: fromX + unitX * point.x, y: fromY + unitY * point.y };
      if (dot.x > left && dot.x < right && dot.y > top && dot.y < bottom) dots.push(dot);
    }
    return dots;
  });
}

/** One path a group, so that five thousand sherds are a dozen nodes. */
export function drawReferences(parent: Parent, data: ScoresData, { dots, theme }: On): void {
  data.groups.forEach(({ slot }, g) => {
    parent
      .append('path')
      .attr('class', 'references')
      .attr('d', marksPath(markOf(slot), theme.markSize, dots[g]!))
      .attr('fill', colourOf(slot, theme));
  });
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
