import type { Box } from './box.ts';
import type { Theme } from './figure.ts';
import { placeLabels } from './labels.ts';
import type { Dot } from './marks.ts';
import type { Parent } from './parts.ts';
import { textWidth } from './text.ts';
import { cornersIn, middleOf, type PanelPlace, type ZoneWords } from './zones-layout.ts';

/** Names drawn zones that are too small for words beside themselves, where there is room on the picture. */
export function nameBeside(
  group: Parent,
  { panel, field }: PanelPlace,
  { words, theme }: { readonly words: ZoneWords; readonly theme: Theme },
): void {
  const em = theme.fontSize;
  const shapes = panel.zones.map((zone) => cornersIn(field, zone));
  const boxes = shapes.map(boxOf);
  const small = panel.zones.flatMap((zone, i) => (words(zone).length === 0 ? [i] : []));
  const texts = small.map((i) => `${panel.zones[i]!.label}: ${panel.zones[i]!.outcome}`);
  const wishes = small.map((i, n) => {
    const { left, right, top, bottom } = boxes[i]!;
    const radius = Math.min(right - left, bottom - top) / 2;
    return { ...middleOf(shapes[i]!), markRadius: radius, width: textWidth(texts[n]!, em), height: 1.1 * em };
  });
  const placed = placeLabels(wishes, { bounds: field, kept: boxes, dots: [] });
  placed.forEach((label, n) => {
    if (label === null) return;
    if (label.leader) lead(group, { box: label.box, to: wishes[n]!, theme });
    group
      .append('text')
      .attr('class', 'beside')
      .attr('x', (label.box.left + label.box.right) / 2)
      .attr('y', (label.box.top + label.box.bottom) / 2 + 0.34 * em)
      .attr('text-anchor', 'middle')
      .attr('fill', theme.ink)
      .text(texts[n]!);
  });
}

function lead(group: Parent, { box, to, theme }: { box: Box; to: Dot; theme: Theme }): void {
  group
    .append('line')
    .attr('x1', to.x)
    .attr('y1', to.y)
    .attr('x2', Math.min(box.right, Math.max(box.left, to.x)))
    .attr('y2', Math.min(box.bottom, Math.max(box.top, to.y)))
    .attr('stroke', theme.ink)
    .attr('stroke-width', 0.7 * theme.lineWidth);
}

function boxOf(corners: readonly Dot[]): Box {
  const [across, up] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return {
    left: Math.min(...across),
    right: Math.max(...across),
    top: Math.min(...up),
    bottom: Math.max(...up),
  };
}
