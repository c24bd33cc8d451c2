import type { ScaleLinear } from 'd3';
import type { ChanceCurve, Level } from '../domain/trials/types.ts';
import type { At, Theme } from './figure.ts';
import { legendHeight, seats } from './legend.ts';
import type { Parent } from './parts.ts';

export interface On {
  readonly plot: { left: number; top: number; right: number; bottom: number };
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly theme: Theme;
  readonly place: (level: Level) => number;
}

/** Each zone a dot: those that came out so above, the others below, stacked where they lie together. */
export function drawZones(root: Parent, curve: ChanceCurve, { x, y, theme, place }: On): void {
  const step = 0.75 * theme.markSize;
  const most = Math.max(2, Math.floor((2 * theme.fontSize) / step));
  const stackOf = ({ at, yes }: Zone) => `${yes} ${at}`;
  const taken = new Map<string, number>();
  const dots = root.append('g').attr('class', 'zones');
  for (const zone of curve.data) {
    const stack = stackOf(zone);
    const n = taken.get(stack) ?? 0;
    taken.set(stack, n + 1);
    const columns = Math.ceil(curve.data.filter((one) => stackOf(one) === stack).length / most);
    const aside = (Math.floor(n / most) - (columns - 1) / 2) * step * 1.1;
    dots
      .append('circle')
      .attr('cx', x(place(zone.at)) + aside)
      .attr('cy', y(zone.yes ? 1 : 0) - (n % most) * step - 0.7 * step)
      .attr('r', 0.33 * theme.markSize)
      .attr('fill', zone.yes ? theme.accent : theme.faint)
      .append('title')
      .text(`${zone.tile} ${zone.zone}: ${zone.yes ? '' : 'not '}${curve.of}`);
  }
}
type Zone = ChanceCurve['data'][number];

/** The key, with how many zones came out so. */
export const keyOf = ({ of, level, data }: ChanceCurve) => [
  { sign: 'yes' as const, text: `Above: ${of} zones (${data.filter(({ yes }) => yes).length})` },
  { sign: 'no' as const, text: `Below: the others (${data.filter(({ yes }) => !yes).length})` },
  { sign: 'band' as const, text: `${Math.round(100 * level)} % interval` },
];

export function drawKey(root: Parent, curve: ChanceCurve, { width, height, theme }: At): void {
  const em = theme.fontSize;
  const entries = keyOf(curve);
  const top = height - legendHeight(entries, width - 2 * em, theme) - 0.3 * em;
  const group = root.append('g').attr('class', 'legend').attr('transform', `translate(${em},${top})`);
  for (const { entry, text, x, middle } of seats(entries, width - 2 * em, theme)) {
    const item = group.append('g').attr('transform', `translate(${x},${middle})`);
    drawSign(item, entry.sign, theme);
    item
      .append('text')
      .attr('x', 1.9 * em)
      .attr('y', 0.33 * em)
      .attr('fill', theme.ink)
      .text(text);
  }
}

function drawSign(item: Parent, sign: 'yes' | 'no' | 'band', theme: Theme): void {
  const em = theme.fontSize;
  if (sign !== 'band')
    item
      .append('circle')
      .attr('cx', 0.7 * em)
      .attr('r', 0.33 * theme.markSize)
      .attr('fill', sign === 'yes' ? theme.accent : theme.faint);
  else
    item
      .append('rect')
      .attr('y', -0.5 * em)
      .attr('width', 1.4 * em)
      .attr('height', em)
      .attr('fill', theme.palette[0]!)
      .attr('fill-opacity', 0.16);
}
