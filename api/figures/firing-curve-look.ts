import type { ScaleLinear } from 'd3';
import type { Theme } from './figure.ts';

/** Where a firing's curve is drawn. */
export interface On {
  readonly plot: { left: number; top: number; right: number; bottom: number };
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
  readonly theme: Theme;
  /** Seconds in a unit of the axis. */
  readonly unit: 60 | 3600;
  /** Room for names at the lines' ends. */
  readonly label: number;
}

/** Beside its colour each channel has a dash of its own, in line widths. */
const DASHES: readonly (readonly number[])[] = [[], [6, 3], [1.5, 2.5], [9, 3, 1.5, 3], [3, 2], [12, 4]];
export const dashOf = (slot: number, theme: Theme) =>
  DASHES[slot % DASHES.length]!.map((part) => part * theme.lineWidth).join(' ');
export const colourOf = (slot: number, theme: Theme) => theme.palette[slot % theme.palette.length]!;
