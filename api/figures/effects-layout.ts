import { type ScaleContinuousNumeric, scaleLinear, scaleLog } from 'd3';
import type { Box } from './box.ts';
import type { EffectRow, EffectsData, EffectsPanel } from './effects-data.ts';
import type { At, Theme } from './figure.ts';
import { logTicks } from './profile-ticks.ts';
import { wrapText } from './text.ts';

/** A panel and the room of its intervals. */
export interface PanelBox {
  readonly panel: EffectsPanel;
  readonly plot: Box;
  readonly width: number;
}
const HEAD = 1.6;
const FOOT = 3.6;
const LINE = 1.25;

/** Words to the left and to the right of the intervals, px wide. */
export function textRoom(width: number, { fontSize: em }: Theme): { left: number; right: number } {
  return { left: Math.min(0.3 * width, 16 * em), right: Math.min(0.3 * width, 13 * em) };
}

export interface RowWords {
  readonly left: readonly string[];
  readonly strong: number;
  readonly right: readonly string[];
}

/** The words of a row, broken to their room: factor and contrast; verdict and numbers. */
export function wordsOfRow(
  { factor, contrast, verdict, words }: EffectRow,
  width: number,
  theme: Theme,
): RowWords {
  const em = theme.fontSize;
  const { left, right } = textRoom(width, theme);
  const factors = wrapText(factor, em, { room: left, most: 2, weight: 'semibold' });
  return {
    left: [...factors, ...wrapText(contrast, em, { room: left, most: 2 })],
    strong: factors.length,
    right: [verdict, ...wrapText(words, em, { room: right, most: 2 })],
  };
}

/** As many lines as the row with most words. */
function linesOf({ panels }: EffectsData, width: number, theme: Theme): number {
  const rows = panels.flatMap((panel) => panel.rows).map((row) => wordsOfRow(row, width, theme));
  return Math.max(...rows.flatMap(({ left, right }) => [left.length, right.length]));
}

export function effectsHeight(data: EffectsData, width: number, theme: Theme): number {
  const em = theme.fontSize;
  const rows = data.panels.reduce((sum, panel) => sum + panel.rows.length, 0);
  const row = linesOf(data, width, theme) * LINE + 0.5;
  return Math.ceil((rows * row + data.panels.length * (HEAD + FOOT)) * em + em);
}

/** Rows that a sheet of a size has room for, where no panel is to be cut. */
export const rowsThatFit = (data: EffectsData, { width, height, theme }: Omit<At, 'document'>): number =>
  Math.max(
    1,
    Math.floor(
      (height / theme.fontSize - 1 - data.panels.length * (HEAD + FOOT)) /
        (linesOf(data, width, theme) * LINE + 0.5),
    ),
  );

/** Panels one under the other, their rows equally far apart. */
export function layEffects(data: EffectsData, { width, height, theme }: At): PanelBox[] {
  const em = theme.fontSize;
  const lines = linesOf(data, width, theme);
  const rows = data.panels.reduce((sum, panel) => sum + panel.rows.length, 0);
  const free = height - em - data.panels.length * (HEAD + FOOT) * em;
  const pitch = Math.min(free / rows, 1.6 * (lines * LINE + 0.5) * em);
  const room = textRoom(width, theme);
  let top = 0.4 * em;
  return data.panels.map((panel) => {
    const from = top + HEAD * em;
    const plot = {
      ...{ left: room.left + 2.4 * em, right: width - room.right - 2.4 * em },
      ...{ top: from, bottom: from + pitch * panel.rows.length },
    };
    top = plot.bottom + FOOT * em;
    return { panel, plot, width };
  });
}

/** Odds are read between a thousandth and a thousand; what lies beyond is an arrow. */
const FARTHEST = 1000;

export function scaleOf({ scale, rows }: EffectsPanel, plot: Box): ScaleContinuousNumeric<number, number> {
  const ends = rows
    .flatMap(({ estimate, low, high }) => [estimate, low, high])
    .filter((value) => value !== null && Number.isFinite(value)) as number[];
  const range = [plot.left, plot.right];
  if (scale !== 'log-odds') {
    const far = Math.max(...ends.map(Math.abs), scale === 'share' ? 0.2 : 0.5);
    return scaleLinear([-1.08 * far, 1.08 * far], range);
  }
  const near = ends.filter((value) => value > 1 / FARTHEST && value < FARTHEST);
  return scaleLog([Math.min(0.5, ...near) / 1.3, Math.max(2, ...near) * 1.3], range);
}

/** Ticks among which no effect always is. */
export function axisTicks(panel: EffectsPanel, plot: Box, most: number): number | readonly number[] {
  if (panel.scale !== 'log-odds') return most;
  const [low, high] = scaleOf(panel, plot).domain() as [number, number];
  if (high / low < 100) return logTicks([low, high], Math.max(3, most));
  const [first, last] = [Math.ceil(Math.log10(low)), Math.floor(Math.log10(high))];
  const every = Math.ceil((last - first + 1) / Math.max(3, most));
  const powers = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  return powers.filter((power) => power % every === 0).map((power) => Number(`1e${power}`));
}
