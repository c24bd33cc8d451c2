import { chemical } from './chemical.ts';
import type { Dot } from './marks.ts';
import type { Parent } from './parts.ts';
import type { ScoresData } from './scores-data.ts';
import type { ScoresLayout } from './scores-layout.ts';
import type { On } from './scores-marks.ts';

/** Arrows shorter than this share of the longest all end in one heap at the origin, where no name can be read. */
const SHORTEST_NAMED = 0.25;

/** Arrows from the origin, all lengthened alike until the longest takes up 0.4 of the plot. */
export function drawLoadings(parent: Parent, data: ScoresData, { layout, theme }: On): void {
  if (data.loadings === null) return;
  const { x, y } = layout;
  for (const { part, tip } of loadingTips(data, layout)) {
    parent
      .append('path')
      .attr('class', 'loading')
      .attr('data-part', part)
      .attr('d', arrow({ x: x(0), y: y(0) }, tip, 0.45 * theme.fontSize))
      .attr('fill', 'none')
      .attr('stroke', theme.faint)
      .attr('stroke-width', theme.lineWidth);
  }
}

function arrow(from: Dot, to: Dot, head: number): string {
  const direction = Math.atan2(to.y - from.y, to.x - from.x);
  const barb = (side: number) =>
    `${to.x - head * Math.cos(direction + side)},${to.y - head * Math.sin(direction + side)}`;
  return `M${from.x},${from.y}L${to.x},${to.y}M${barb(0.5)}L${to.x},${to.y}L${barb(-0.5)}`;
}

/** Px of each arrow's tip, and whether it is long enough to be named. */
export function loadingTips(data: ScoresData, { x, y, plot }: ScoresLayout) {
  const longest = longestOf(data);
  const room = 0.4 * Math.min(plot.right - plot.left, plot.bottom - plot.top);
  return (data.loadings ?? []).map((arrow) => ({
    part: arrow.part,
    name: chemical(arrow.part),
    named: isNamed(arrow, longest),
    tip: { x: x(0) + (arrow.x / longest) * room, y: y(0) - (arrow.y / longest) * room },
  }));
}

/** Oxides whose arrows are too short to be named; a caption lists them. */
export function unnamedLoadings(data: ScoresData): string[] {
  const longest = longestOf(data);
  return (data.loadings ?? []).filter((arrow) => !isNamed(arrow, longest)).map(({ part }) => part);
}

const longestOf = ({ loadings }: ScoresData) =>
  Math.max(...(loadings ?? []).map((arrow) => Math.hypot(arrow.x, arrow.y)), 1e-12);
const isNamed = ({ x, y }: Dot, longest: number) => Math.hypot(x, y) >= SHORTEST_NAMED * longest;
