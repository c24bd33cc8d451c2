import { hoursMinutes } from './stages.ts';
import type { Bounded, ChannelSummary, FiringSummary, LogFlagKind, Rate } from './types.ts';

/** Said wherever bounds hold for the last digit only. */
const UNKNOWN_SENSOR =
  'Nothing is known of the sensor’s error, so ± and bounds hold for the last digit only.';

/** Doubts that throw every number of a log into doubt. */
const UNITS_IN_DOUBT: ReadonlySet<LogFlagKind> = new Set([
  'fahrenheit',
  'celsius-as-fahrenheit',
  'too-fast',
  'too-slow',
]);

const degrees = (value: number) => Math.round(value).toLocaleString('en-GB').replace('-', '−');

/**
 * A temperature with half the width of its bounds: `850 ± 6.9 °C`.
 *
 * @example
 * celsiusInWords({ value: 850, low: 843.125, high: 856.875 }) // '850 ± 7 °C'
 */
export function celsiusInWords({ value, low, high }: Bounded): string {
  return `${degrees(value)} ± ${degrees(Math.max(value - low, high - value))} °C`;
}

/**
 * A firing in two or three plain sentences: peak, time above the highest temperature it passed, fastest heating.
 *
 * @example
 * const channel = { name: 'top', sensor: { kind: 'stated', celsius: 7 }, peak: { value: 850, low: 843, high: 857, seconds: 5400 }, timeAbove: [{ threshold: 800, seconds: { value: 1200, low: 600, high: 1500 } }], fastestHeating: null }
 * summarySentence({ duration: 9000, channels: [channel], unevenness: null, flags: [] }) // 'Peak 850 ± 7 °C at 1:30 h (top). Above 800 °C for 0:20 h (0:10 to 0:25).'
 */
export function summarySentence(summary: Omit<FiringSummary, 'sentence'>): string {
  const hottest = hottestChannel(summary.channels);
  if (!hottest?.peak) return 'No channel has a reading that can be used.';
  return [
    `Peak ${celsiusInWords(hottest.peak)} at ${hoursMinutes(hottest.peak.seconds)} h (${hottest.name}).`,
    ...longestAbove(hottest),
    ...(hottest.fastestHeating ? [fastest(hottest.fastestHeating)] : []),
    ...(hottest.sensor.kind === 'unknown' ? [UNKNOWN_SENSOR] : []),
    ...(summary.unevenness
      ? [
          `The peaks of the channels lie ${degrees(summary.unevenness.value)} °C apart (${degrees(summary.unevenness.low)} to ${degrees(summary.unevenness.high)}).`,
        ]
      : []),
    ...summary.flags.filter((f) => UNITS_IN_DOUBT.has(f.kind)).map((f) => f.message),
  ].join(' ');
}

/**
 * The channel with the highest peak; null without one.
 *
 * @example
 * hottestChannel([{ name: 'a', peak: { value: 800 } }, { name: 'b', peak: { value: 820 } }]).name // 'b'
 */
export function hottestChannel(channels: readonly ChannelSummary[]): ChannelSummary | null {
  return channels.reduce<ChannelSummary | null>(
    (best, c) => (c.peak && (!best?.peak || c.peak.value > best.peak.value) ? c : best),
    null,
  );
}

function longestAbove({ timeAbove }: ChannelSummary): string[] {
  const passed = timeAbove.filter((t) => t.seconds.value > 0);
  const highest = passed.reduce<(typeof passed)[number] | null>(
    (a, b) => (a && a.threshold > b.threshold ? a : b),
    null,
  );
  if (!highest) return [];
  const { value, low, high } = highest.seconds;
  return [
    `Above ${degrees(highest.threshold)} °C for ${hoursMinutes(value)} h (${hoursMinutes(low)} to ${hoursMinutes(high)}).`,
  ];
}

function fastest({ perHour, from, to }: Rate): string {
  return `Fastest heating ${degrees(perHour.value)} °C per hour (${degrees(perHour.low)} to ${degrees(perHour.high)}) over ${Math.round((to - from) / 60)} minutes.`;
}
