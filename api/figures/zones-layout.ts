import { polygonCentroid, polygonContains } from 'd3';
import type { Box } from './box.ts';
import type { Theme } from './figure.ts';
import type { Dot } from './marks.ts';
import { textWidth } from './text.ts';
import type { ShownZone, ZonesData, ZonesPanel } from './zones-data.ts';

/** Where a panel's heading and its zones go, px. */
export interface PanelPlace {
  readonly panel: ZonesPanel;
  readonly box: Box;
  /** The grid or picture itself, below the heading. */
  readonly field: Box;
  readonly headLines: 1 | 2;
}
const GAP = 1.1;
const LINE = 1.2;
/** A zone's words need about so many em. */
const ZONE = { wide: 4.4, high: 3.9 };

/** Lays panels out in the number of columns that leaves their zones the most room. */
export function placePanels({ panels }: ZonesData, area: Box, theme: Theme): PanelPlace[] {
  const em = theme.fontSize;
  const options = panels.map((_, i) => slots(panels, i + 1, { area, em }));
  const best = options.reduce((a, b) => (roomIn(b, em) > roomIn(a, em) + 1e-9 ? b : a));
  return best.map((box, i) => {
    const panel = panels[i]!;
    const headLines = panel.under.length > 0 && box.bottom - box.top > headRoom(em, 2) + 6 * em ? 2 : 1;
    const free = { ...box, top: box.top + headRoom(em, headLines) };
    return { panel, box, headLines, field: panel.ratio === null ? free : kept(free, panel.ratio) };
  });
}

const headRoom = (em: number, lines: number) => (lines * LINE + 0.4) * em;

function slots(panels: readonly ZonesPanel[], columns: number, at: { area: Box; em: number }): Box[] {
  const { area, em } = at;
  const rows = Math.ceil(panels.length / columns);
  const width = (area.right - area.left - (columns - 1) * GAP * em) / columns;
  const height = (area.bottom - area.top - (rows - 1) * GAP * em) / rows;
  return panels.map((_, i) => {
    const left = area.left + (i % columns) * (width + GAP * em);
    const top = area.top + Math.floor(i / columns) * (height + GAP * em);
    return { left, top, right: left + width, bottom: top + height };
  });
}

/** Room of the most crowded zone, against what its words need. */
function roomIn(boxes: readonly Box[], em: number): number {
  const [first] = boxes;
  const wide = (first!.right - first!.left) / (3 * ZONE.wide * em);
  const high = (first!.bottom - first!.top - headRoom(em, 1)) / (2 * ZONE.high * em);
  return Math.min(wide, high);
}

/** The largest box of a ratio within another, in its middle. */
function kept({ left, top, right, bottom }: Box, ratio: number): Box {
  const width = Math.min(right - left, (bottom - top) * ratio);
  const [x, height] = [(left + right - width) / 2, width / ratio];
  return { left: x, right: x + width, top, bottom: top + height };
}

/** Height in px that leaves every zone of a grid room for its words. */
export function panelsHeight({ panels }: ZonesData, width: number, theme: Theme): number {
  const em = theme.fontSize;
  const across = Math.max(...panels.map(({ grid }) => grid?.[0] ?? 3));
  const up = Math.max(...panels.map(({ grid }) => grid?.[1] ?? 3));
  const columns = Math.max(
    1,
    Math.min(panels.length, Math.floor(width / (across * ZONE.wide * em + GAP * em))),
  );
  return Math.ceil(panels.length / columns) * (headRoom(em, 2) + up * ZONE.high * em + GAP * em);
}

export const cornersIn = (field: Box, { corners }: ShownZone): Dot[] =>
  corners.map(([x, y]) => ({
    x: field.left + x * (field.right - field.left),
    y: field.top + y * (field.bottom - field.top),
  }));

/** What may stand in a zone, the fullest first. */
const WORDINGS: readonly ((zone: ShownZone) => readonly string[])[] = [
  ({ label, thickness, outcome }) => [label, thickness, outcome],
  ({ label, thickness, outcome }) => [[label, thickness].filter(Boolean).join(': '), outcome],
  ({ short, outcome }) => [short, outcome],
  ({ short }) => [short],
  () => [],
];
export type ZoneWords = (zone: ShownZone) => readonly string[];

/** The fullest wording that fits: the same in all zones of grids, each its own where zones are drawn. */
export function wordsThatFit(places: readonly PanelPlace[], theme: Theme): ZoneWords {
  const fits = (zone: ShownZone, field: Box, of: ZoneWords) =>
    hasRoom(cornersIn(field, zone), of(zone).filter(Boolean), theme);
  const grids = places.filter(({ panel }) => panel.grid !== null);
  const common = WORDINGS.find((of) =>
    grids.every(({ panel, field }) => panel.zones.every((zone) => fits(zone, field, of))),
  )!;
  const own = places
    .filter(({ panel }) => panel.grid === null)
    .flatMap(({ panel, field }) =>
      panel.zones.map((zone) => [zone, WORDINGS.find((of) => fits(zone, field, of))!] as const),
    );
  const chosen = new Map(own);
  return (zone) => (chosen.get(zone) ?? common)(zone).filter(Boolean);
}

function hasRoom(corners: readonly Dot[], lines: readonly string[], theme: Theme): boolean {
  if (lines.length === 0) return true;
  const em = theme.fontSize;
  const shape = corners.map(({ x, y }): [number, number] => [x, y]);
  const middle = middleOf(corners);
  const half = Math.max(...lines.map((line) => textWidth(line, em, 'semibold'))) / 2 + 0.25 * em;
  const high = (lines.length * LINE * em) / 2 + 0.1 * em;
  const edge = [-1, -0.5, 0, 0.5, 1];
  return edge.every((a) =>
    edge.every((b) => polygonContains(shape, [middle.x + a * half, middle.y + b * high])),
  );
}

export function middleOf(corners: readonly Dot[]): Dot {
  const [x, y] = polygonCentroid(corners.map((corner) => [corner.x, corner.y]));
  return { x, y };
}
