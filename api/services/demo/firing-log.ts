import { randomStream } from '../../domain/statistics/random.ts';

/** Minute and °C of corners that a fire goes through. */
type Corner = readonly [minute: number, celsius: number];

export interface InventedLog {
  readonly fileName: string;
  readonly corners: readonly Corner[];
  /** How much cooler it was at the edge of the pit, as a share. */
  readonly edge: number;
  /** Minute at which a loose contact made one reading jump. */
  readonly spike: number;
  /** Minutes without readings, as when the logger was taken out of the rain. */
  readonly gap: readonly [from: number, to: number];
  readonly seed: number;
}

const STEP = 20;
const SMOOTH = 4;
const FLICKER = 2.2;
const AIR = 8;

/** A thermocouple log that no logger wrote: text as a two-channel logger would give it, the same every time. */
export function inventedLog({ corners, edge, spike, gap, seed }: InventedLog): string {
  const { normal } = randomStream(seed);
  const last = corners.at(-1)![0];
  const rows = Array.from({ length: Math.floor((60 * last) / STEP) + 1 }, (_, i) => {
    const minute = (i * STEP) / 60;
    if (minute > gap[0] && minute < gap[1]) return null;
    const pot = smoothed(corners, minute) + FLICKER * normal();
    const rim = AIR + (smoothed(corners, minute - 3) - AIR) * (1 - edge) + FLICKER * normal();
    const shown = Math.abs(minute - spike) < STEP / 120 ? 1370 : pot;
    return `${clock(i * STEP)},${shown.toFixed(1)},${rim.toFixed(1)}`;
  });
  return [
    'Invented for demonstration: no logger wrote this',
    'Elapsed,Beside the pot (°C),Edge of the pit (°C)',
    ...rows.filter((row) => row !== null),
  ].join('\n');
}

const clock = (seconds: number) =>
  [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60]
    .map((part, i) => (i === 0 ? String(part) : String(part).padStart(2, '0')))
    .join(':');

/** On straight lines between the corners, their edges taken off over a few minutes. */
function smoothed(corners: readonly Corner[], minute: number): number {
  const around = Array.from({ length: 2 * SMOOTH + 1 }, (_, k) => onLine(corners, minute + k - SMOOTH));
  return around.reduce((sum, t) => sum + t, 0) / around.length;
}

function onLine(corners: readonly Corner[], minute: number): number {
  const after = corners.findIndex(([at]) => at > minute);
  if (after === 0) return corners[0]![1];
  if (after < 0) return corners.at(-1)![1];
  const [[m, a], [n, b]] = [corners[after - 1]!, corners[after]!];
  return a + ((b - a) * (minute - m)) / (n - m);
}
