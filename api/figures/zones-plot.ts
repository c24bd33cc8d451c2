import type { Box } from './box.ts';
import type { Figure, Theme } from './figure.ts';
import { legendHeight } from './legend.ts';
import type { Dot } from './marks.ts';
import { newDrawing, type Parent } from './parts.ts';
import { fitText, textWidth } from './text.ts';
import type { ZonesData } from './zones-data.ts';
import {
  cornersIn,
  middleOf,
  type PanelPlace,
  panelsHeight,
  placePanels,
  wordsThatFit,
  type ZoneWords,
} from './zones-layout.ts';
import { drawKey, drawShape, keyOf, lookOf, type Shaped } from './zones-marks.ts';
import { nameBeside } from './zones-names.ts';

/** Tiles as they lie, each zone in its place: gloss by fill and hatching, thickness and gloss in words. */
export const zonesPlot: Figure<ZonesData> = (data, at) => {
  const { width, height, theme } = at;
  const em = theme.fontSize;
  const { svg, root } = newDrawing({ id: data.id, title: data.title, description: describe(data) }, at);
  const keyRoom = legendHeight(keyOf(data, true), width - 2 * em, theme);
  const area = { left: em, right: width - em, top: 0.7 * em, bottom: height - keyRoom - 1.4 * em };
  const places = placePanels(data, area, theme);
  const words = wordsThatFit(places, theme);
  for (const place of places) drawPanel(root, place, { theme, words });
  const bare = places.some(({ panel }) => panel.zones.some((zone) => words(zone)[0] === zone.short));
  drawKey(root, keyOf(data, bare), {
    left: em,
    top: height - keyRoom - 0.5 * em,
    width: width - 2 * em,
    theme,
  });
  return svg;
};

export const zonesHeight = (data: ZonesData, width: number, theme: Theme): number => {
  const em = theme.fontSize;
  const key = legendHeight(keyOf(data, true), width - 2 * em, theme);
  return Math.ceil(panelsHeight(data, width - 2 * em, theme) + key + 2.1 * em);
};

const describe = ({ panels }: ZonesData) =>
  panels
    .map(({ title, zones }) => {
      const each = zones.map(({ label, thickness, outcome }) =>
        [label, thickness, outcome].filter(Boolean).join(' '),
      );
      return `${title}: ${each.join(', ')}.`;
    })
    .join(' ');

interface How {
  readonly theme: Theme;
  readonly words: ZoneWords;
}

function drawPanel(root: Parent, place: PanelPlace, { theme, words }: How): void {
  const { panel, box, field, headLines } = place;
  const em = theme.fontSize;
  const group = root.append('g').attr('class', 'panel');
  const room = box.right - box.left;
  const heading = (text: string, line: number) =>
    group
      .append('text')
      .attr('x', box.left)
      .attr('y', box.top + (0.95 + 1.2 * line) * em)
      .attr('fill', line === 0 ? theme.ink : theme.faint)
      .text(fitText(text, em, room, line === 0 ? 'semibold' : 'regular'));
  heading(panel.title, 0).attr('font-weight', 600);
  if (headLines === 2) heading(thatFit(panel.under, em, room), 1);
  if (panel.ratio !== null) frame(group, field, theme);
  for (const zone of panel.zones) {
    const corners = cornersIn(field, zone);
    const item = group.append('g').attr('class', `zone ${lookOf(zone).replace(' ', '-')}`);
    item.append('title').text([zone.label, zone.thickness, zone.outcome].filter(Boolean).join(', '));
    drawShape(item, corners, { look: lookOf(zone), theme });
    drawWords(item, words(zone), { middle: middleOf(corners), look: lookOf(zone), theme });
  }
  if (panel.grid === null) nameBeside(group, place, { theme, words });
}

/** Whole settings only, as many as there is room for. */
function thatFit(settings: readonly string[], em: number, room: number): string {
  const counts = settings.map((_, i) => settings.slice(0, i + 1).join(', '));
  return counts.findLast((text) => textWidth(text, em) <= room) ?? '';
}

/** The picture's own edge. */
function frame(group: Parent, { left, top, right, bottom }: Box, theme: Theme): void {
  group
    .append('rect')
    .attr('x', left)
    .attr('y', top)
    .attr('width', right - left)
    .attr('height', bottom - top)
    .attr('fill', 'none')
    .attr('stroke', theme.grid)
    .attr('stroke-width', theme.lineWidth);
}

function drawWords(
  item: Parent,
  lines: readonly string[],
  { middle, look, theme }: Shaped & { readonly middle: Dot },
): void {
  const em = theme.fontSize;
  lines.forEach((line, i) => {
    const y = middle.y + (i - (lines.length - 1) / 2) * 1.2 * em;
    const weight = i === 0 ? 'semibold' : 'regular';
    const half = textWidth(line, em, weight) / 2 + 0.2 * em;
    if (look === 'satin')
      item
        .append('rect')
        .attr('x', middle.x - half)
        .attr('y', y - 0.58 * em)
        .attr('width', 2 * half)
        .attr('height', 1.16 * em)
        .attr('fill', theme.background);
    item
      .append('text')
      .attr('x', middle.x)
      .attr('y', y + 0.33 * em)
      .attr('text-anchor', 'middle')
      .attr('font-weight', i === 0 ? 600 : null)
      .attr('fill', look === 'glossy' ? theme.background : theme.ink)
      .text(line);
  });
}
