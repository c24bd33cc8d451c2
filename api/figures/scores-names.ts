import type { Box } from './box.ts';
import type { Theme } from './figure.ts';
import { type LabelWish, type PlacedLabel, placeLabels } from './labels.ts';
import type { Dot } from './marks.ts';
import { type Parent, replicaRadius } from './parts.ts';
import type { ScoresData } from './scores-data.ts';
import { loadingTips } from './scores-loadings.ts';
import type { On } from './scores-marks.ts';
import { fitText, textWidth } from './text.ts';

interface Name {
  readonly text: string;
  readonly at: Dot;
  readonly radius: number;
  readonly weight: 'regular' | 'semibold';
  readonly colour: string;
  readonly prefer?: number;
}

/** Names what the data asks to be named, where each finds room; those that find none stay unnamed. */
export function drawNames(parent: Parent, data: ScoresData, on: On): void {
  const { layout, theme } = on;
  const names = namesOf(data, on).filter(({ at }) => inside(at, layout.plot));
  const shafts = loadingTips(data, layout).flatMap(({ tip }) =>
    dotsAlong({ x: layout.x(0), y: layout.y(0) }, tip),
  );
  const kept = data.replicas.map((replica) =>
    round(layout.x(replica.x), layout.y(replica.y), replicaRadius(theme, replica.chosen)),
  );
  const wishes = names.map((name) => wishOf(name, theme));
  const placed = placeLabels(wishes, { bounds: layout.plot, kept, dots: [...on.dots.flat(), ...shafts] });
  const group = parent.append('g').attr('class', 'names');
  group.attr('data-unplaced', placed.filter((label) => label === null).length);
  placed.forEach((label, i) => {
    if (label !== null) drawName(group, names[i]!, { label, theme });
  });
}

/** A line as dots that names had better not hide. */
function dotsAlong(from: Dot, to: Dot): Dot[] {
  const count = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 8);
  return Array.from({ length: count }, (_, i) => {
    const share = i / count;
    return { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
  });
}

function namesOf(data: ScoresData, { layout, theme, dots }: On): Name[] {
  const at = (point: Dot) => ({ x: layout.x(point.x), y: layout.y(point.y) });
  const replicas = data.replicas
    .filter(
      ({ chosen }) =>
        data.naming === 'replicas' || data.naming === 'everything' || (data.naming === 'chosen' && chosen),
    )
    .sort((one, other) => Number(other.chosen) - Number(one.chosen))
    .map((replica) => ({
      text: replica.label,
      at: at(replica),
      radius: replicaRadius(theme, replica.chosen),
      weight: replica.chosen ? ('semibold' as const) : ('regular' as const),
      colour: theme.ink,
    }));
  const outward = (tip: Dot) => Math.atan2(tip.y - layout.y(0), tip.x - layout.x(0));
  const oxides = loadingTips(data, layout)
    .filter(({ named }) => named)
    .map(({ name, tip }) => ({
      ...{
        text: name,
        at: tip,
        radius: 0,
        weight: 'regular' as const,
        colour: theme.faint,
        prefer: outward(tip),
      },
    }));
  return [...replicas, ...oxides, ...sherdNames(data, { layout, theme, dots })];
}

/** More sherds than this in sight would be a heap of names, and slow; coming nearer names them. */
const MOST_NAMED = 400;

function sherdNames(data: ScoresData, { layout, theme, dots }: On): Name[] {
  if (data.naming !== 'everything' || dots.flat().length > MOST_NAMED) return [];
  const about = { radius: theme.markSize / 2, weight: 'regular', colour: theme.faint } as const;
  return data.groups.flatMap(({ points }) =>
    points.map(({ label, x, y }) => ({ ...about, text: label, at: { x: layout.x(x), y: layout.y(y) } })),
  );
}

function wishOf(name: Name, theme: Theme): LabelWish {
  const em = theme.fontSize;
  return {
    ...name.at,
    markRadius: name.radius,
    width: textWidth(textOf(name, theme), em, name.weight) + 0.3 * em,
    height: 1.1 * em,
    prefer: name.prefer ?? 0,
  };
}
const textOf = (name: Name, theme: Theme): string =>
  fitText(name.text, theme.fontSize, 14 * theme.fontSize, name.weight);
const inside = ({ x, y }: Dot, plot: Box): boolean =>
  x >= plot.left && x <= plot.right && y >= plot.top && y <= plot.bottom;
const round = (x: number, y: number, radius: number): Box => ({
  left: x - radius,
  right: x + radius,
  top: y - radius,
  bottom: y + radius,
});

function drawName(group: Parent, name: Name, { label, theme }: { label: PlacedLabel; theme: Theme }): void {
  const { box } = label;
  const em = theme.fontSize;
  if (label.leader)
    group
      .append('line')
      .attr('x1', name.at.x)
      .attr('y1', name.at.y)
      .attr('x2', Math.min(box.right, Math.max(box.left, name.at.x)))
      .attr('y2', Math.min(box.bottom, Math.max(box.top, name.at.y)))
      .attr('stroke', theme.faint)
      .attr('stroke-width', 0.7 * theme.lineWidth);
  group
    .append('rect')
    .attr('x', box.left)
    .attr('y', box.top)
    .attr('width', box.right - box.left)
    .attr('height', box.bottom - box.top)
    .attr('fill', theme.background)
    .attr('fill-opacity', 0.72);
  group
    .append('text')
    .attr('x', (box.left + box.right) / 2)
    .attr('y', (box.top + box.bottom) / 2 + 0.34 * em)
    .attr('text-anchor', 'middle')
    .attr('font-weight', name.weight === 'semibold' ? 600 : null)
    .attr('fill', name.colour)
    .text(textOf(name, theme));
}
