import type { Theme } from './figure.ts';
import { colourOf, markOf, marksPath } from './marks.ts';
import { type Parent, replicaMark } from './parts.ts';
import { fitText, textWidth } from './text.ts';

export type LegendEntry =
  | { readonly kind: 'group' | SpreadSign; readonly slot: number; readonly text: string }
  | { readonly kind: 'replica' | 'chosen' | 'ellipse' | 'loading' | 'mark'; readonly text: string };
/** Lines in the group's own colour. */
type SpreadSign = 'range' | 'quartiles' | 'middle';

/** Where an entry stands; `middle` is the middle of its line, px below the key's top. */
interface Seat<Entry> {
  readonly entry: Entry;
  readonly text: string;
  readonly x: number;
  readonly line: number;
  readonly middle: number;
}
const SIGN = 1.9;
const BETWEEN = 1.4;
const LINE = 1.6;

/** Entries side by side, on as many lines as the width asks for. */
export function seats<Entry extends { readonly text: string }>(
  entries: readonly Entry[],
  width: number,
  theme: Theme,
): Seat<Entry>[] {
  const em = theme.fontSize;
  let [x, line] = [0, 0];
  return entries.map((entry) => {
    const text = fitText(entry.text, em, width - SIGN * em);
    const wide = SIGN * em + textWidth(text, em);
    if (x > 0 && x + wide > width) [x, line] = [0, line + 1];
    const seat = { entry, text, x, line, middle: (line + 0.5) * LINE * em };
    x += wide + BETWEEN * em;
    return seat;
  });
}

/** Height of a key of such entries, px. */
export function legendHeight(
  entries: readonly { readonly text: string }[],
  width: number,
  theme: Theme,
): number {
  const last = seats(entries, width, theme).at(-1);
  return last === undefined ? 0 : (last.line + 1) * LINE * theme.fontSize;
}

/** Draws the key to marks and lines at a place of the figure. */
export function drawLegend(
  parent: Parent,
  entries: readonly LegendEntry[],
  at: { readonly left: number; readonly top: number; readonly width: number; readonly theme: Theme },
): void {
  const { theme } = at;
  const em = theme.fontSize;
  const group = parent
    .append('g')
    .attr('class', 'legend')
    .attr('transform', `translate(${at.left},${at.top})`);
  for (const { entry, text, x, middle } of seats(entries, at.width, theme)) {
    const item = group.append('g').attr('transform', `translate(${x},${middle})`);
    drawSign(item, entry, theme);
    item
      .append('text')
      .attr('x', SIGN * em)
      .attr('y', 0.33 * em)
      .attr('fill', theme.ink)
      .text(text);
  }
}

function drawSign(item: Parent, entry: LegendEntry, theme: Theme): void {
  const em = theme.fontSize;
  const middle = { x: 0.7 * em, y: 0 };
  if (entry.kind === 'group')
    item
      .append('path')
      .attr('d', marksPath(markOf(entry.slot), theme.markSize, [middle]))
      .attr('fill', colourOf(entry.slot, theme));
  else if (entry.kind === 'replica' || entry.kind === 'chosen')
    replicaMark(item, middle, { theme, chosen: entry.kind === 'chosen' });
  else if (entry.kind === 'ellipse')
    item
      .append('ellipse')
      .attr('cx', middle.x)
      .attr('rx', 0.7 * em)
      .attr('ry', 0.42 * em)
      .attr('fill', 'none')
      .attr('stroke', theme.ink)
      .attr('stroke-width', theme.lineWidth);
  else
    drawLine(item, entry.kind, {
      theme,
      colour: 'slot' in entry ? colourOf(entry.slot, theme) : entry.kind === 'mark' ? theme.ink : theme.faint,
    });
}

/** A line as thick and as strong as the one it stands for. */
function drawLine(
  item: Parent,
  kind: SpreadSign | 'loading' | 'mark',
  { theme, colour }: { readonly theme: Theme; readonly colour: string },
): void {
  const em = theme.fontSize;
  const upright = kind === 'middle' || kind === 'mark';
  const thickness = kind === 'quartiles' ? 0.55 * em : theme.lineWidth * (upright ? 2 : 1);
  item
    .append('line')
    .attr('x1', upright ? 0.7 * em : 0)
    .attr('x2', upright ? 0.7 * em : 1.4 * em)
    .attr('y1', upright ? -0.5 * em : 0)
    .attr('y2', upright ? 0.5 * em : 0)
    .attr('stroke', colour)
    .attr('stroke-opacity', kind === 'quartiles' ? 0.3 : 1)
    .attr('stroke-width', thickness);
}
