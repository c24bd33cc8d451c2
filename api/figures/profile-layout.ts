import { scaleLog } from 'd3';
import type { Box } from './box.ts';
import { chemical } from './chemical.ts';
import type { Theme } from './figure.ts';
import { type LegendEntry, legendHeight } from './legend.ts';
import type { ProfileData } from './profile-data.ts';
import { numeral, textWidth } from './text.ts';

/** `1.8× lower`, `1.3× higher`, `the same` where it is within 1 %. */
export function howFarOff(factor: number): string {
  const times = factor < 1 ? 1 / factor : factor;
  if (times < 1.01) return 'the same';
  const shown = times < 10 ? numeral(times, times < 1.095 ? 2 : 1) : numeral(times, 0);
  return `${shown}× ${factor < 1 ? 'lower' : 'higher'}`;
}

/** px the figure wants for all its rows at a given width. */
export function profileHeight(data: ProfileData, width: number, theme: Theme): number {
  const em = theme.fontSize;
  return data.rows.length * ROW * em + AROUND * em + legendHeight(legendOf(data), width - 2 * em, theme);
}
const ROW = 2.1;
const AROUND = 5.2;

/** Where everything of an oxide profile stands. */
export function profileLayout(data: ProfileData, at: { width: number; height: number; theme: Theme }) {
  const { width, height, theme } = at;
  const em = theme.fontSize;
  const legend = legendOf(data);
  const names = Math.max(...data.rows.map(({ oxide }) => textWidth(chemical(oxide), em)), em);
  const words = Math.max(
    ...data.rows.map(({ factor }) => (factor === null ? 0 : textWidth(howFarOff(factor), em))),
    0,
  );
  const plot: Box = {
    left: names + 1.6 * em,
    right: width - 1.2 * em - (words > 0 ? words + 0.8 * em : 0),
    top: 0.6 * em,
    bottom: height - legendHeight(legend, width - 2 * em, theme) - (AROUND - 0.6) * em,
  };
  const x = scaleLog(domainOf(data), [plot.left, plot.right]);
  const legendTop = height - legendHeight(legend, width - 2 * em, theme) - 0.4 * em;
  return { plot, x, legend, legendTop, rowHeight: (plot.bottom - plot.top) / Math.max(1, data.rows.length) };
}

/** From the smallest to the largest value, a little wider, the group's centre always in sight. */
function domainOf(data: ProfileData): [number, number] {
  const values = data.rows.flatMap(({ spread, values }) => [spread.low, spread.high, ...values]);
  const shown = [...values, ...(data.basis === 'ratio' ? [0.67, 1.5] : [])].filter((value) => value > 0);
  if (shown.length === 0) return [0.1, 10];
  const [low, high] = [Math.min(...shown), Math.max(...shown)];
  const margin = Math.max((high / low) ** 0.04, 1.03);
  return [low / margin, high * margin];
}

function legendOf(data: ProfileData): LegendEntry[] {
  const { name, n, slot } = data.group;
  const boxed = data.rows.some(({ spread }) => spread.quartiles !== null);
  const spread: LegendEntry[] = boxed
    ? [
        { kind: 'range', slot, text: `${name} (${n}), all` },
        { kind: 'quartiles', slot, text: 'middle half' },
        { kind: 'middle', slot, text: 'median' },
      ]
    : [{ kind: 'group', slot, text: `${name} (${n}), each` }];
  const replicas = data.replicas.map(
    ({ label, chosen }) => ({ kind: chosen ? 'chosen' : 'replica', text: label }) as const,
  );
  return [...spread, ...replicas.filter(({ kind }) => kind === 'chosen'), ...othersOf(replicas)];
}
function othersOf(replicas: readonly { kind: 'chosen' | 'replica'; text: string }[]): LegendEntry[] {
  const others = replicas.filter(({ kind }) => kind === 'replica');
  if (others.length < 2) return others;
  return [{ kind: 'replica', text: `${others.length} other replicas` }];
}
