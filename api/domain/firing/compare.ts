import { listInWords } from '../placement/words.ts';
import { RequirementError } from '../requirement.ts';
import { hottestChannel } from './summary-words.ts';
import type { Bounded, ChannelSummary, ComparisonRow, FiringComparison, NamedSummary } from './types.ts';

interface Quantity {
  readonly quantity: string;
  readonly unit: string;
  /** Why firings are not judged by it. */
  readonly notJudged?: string;
  readonly of: (channel: ChannelSummary, firing: NamedSummary) => Bounded | null;
}

const HOURS = 3600;
const inHours = ({ value, low, high }: Bounded): Bounded => ({
  value: value / HOURS,
  low: low / HOURS,
  high: high / HOURS,
});

/**
 * Firings side by side, by the hottest channel of each: peak, time above the temperatures that all were asked for,
 * fastest heating and cooling, unevenness. Two differ where their bounds lie apart. How long each log runs is told and
 * not judged. Throws with fewer than two firings.
 *
 * @example
 * const peak = (value) => ({ value, low: value - 7, high: value + 7, seconds: 3600 })
 * const firing = (name, value) => ({ name, summary: { duration: 7200, unevenness: null, channels: [{ name: 'top', sensor: { kind: 'stated', celsius: 7 }, peak: peak(value), timeAbove: [], fastestHeating: null, fastestCooling: null }] } })
 * compareFirings([firing('May', 850), firing('June', 820)]).rows[0] // { quantity: 'peak', unit: '°C', notJudged: null, differ: true }
 * compareFirings([firing('May', 850), firing('June', 845)]).rows[0].differ // false
 * compareFirings([firing('May', 850)]) // throws a comparison needs two firings or more; found 1
 */
export function compareFirings(firings: readonly NamedSummary[]): FiringComparison {
  if (firings.length < 2)
    throw new RequirementError(`a comparison needs two firings or more; found ${firings.length}`);
  const hottest = firings.map((f) => hottestChannel(f.summary.channels));
  const rows = quantities(hottest).map(({ quantity, unit, of, notJudged = null }): ComparisonRow => {
    const values = firings.map((f, i) => {
      const channel = hottest[i];
      return channel ? of(channel, f) : null;
    });
    return { quantity, unit, values, notJudged, differ: notJudged === null ? differ(values) : null };
  });
  return {
    firings: firings.map((f) => f.name),
    rows,
    sentence: [sentence(firings, rows), ...unknownSensors(firings, hottest)].join(' '),
  };
}

/** Bounds of a sensor of which nothing is known are too narrow to tell firings apart by. */
function unknownSensors(
  firings: readonly NamedSummary[],
  hottest: readonly (ChannelSummary | null)[],
): string[] {
  const names = firings.filter((_, i) => hottest[i]?.sensor.kind === 'unknown').map((f) => f.name);
  if (names.length === 0) return [];
  return [
    `Nothing is known of the sensor of ${listInWords(names)}, so what looks like a difference may be the sensor’s.`,
  ];
}

function quantities(channels: readonly (ChannelSummary | null)[]): Quantity[] {
  const asked = channels.map((c) => (c?.timeAbove ?? []).map((t) => t.threshold));
  const common = (asked[0] ?? []).filter((t) => asked.every((list) => list.includes(t)));
  return [
    { quantity: 'peak', unit: '°C', of: (c) => c.peak },
    ...common.map((threshold) => ({
      quantity: `time above ${threshold} °C`,
      unit: 'h',
      of: (c: ChannelSummary) => inHours(c.timeAbove.find((t) => t.threshold === threshold)!.seconds),
    })),
    { quantity: 'fastest heating', unit: '°C per hour', of: (c) => c.fastestHeating?.perHour ?? null },
    { quantity: 'fastest cooling', unit: '°C per hour', of: (c) => c.fastestCooling?.perHour ?? null },
    { quantity: 'unevenness of peaks', unit: '°C', of: (_, f) => f.summary.unevenness },
    {
      quantity: 'length of the log',
      unit: 'h',
      notJudged: 'how long the logger ran, which is not how long the fire burned',
      of: (_, { summary: { duration } }) => inHours({ value: duration, low: duration, high: duration }),
    },
  ];
}

function differ(values: readonly (Bounded | null)[]): boolean | null {
  const known = values.filter((v) => v !== null);
  if (known.length < 2) return null;
  const highest = known.reduce((a, b) => (b.value > a.value ? b : a));
  const lowest = known.reduce((a, b) => (b.value < a.value ? b : a));
  return highest.low > lowest.high;
}

function sentence(firings: readonly NamedSummary[], rows: readonly ComparisonRow[]): string {
  const apart = rows.filter((r) => r.differ).map((r) => r.quantity);
  const alike = rows.filter((r) => r.differ === false);
  const names = listInWords(firings.map((f) => f.name));
  return apart.length === 0
    ? `${names}: nothing differs by more than the sensors’ errors.`
    : `${names} differ in ${listInWords(apart)} by more than the sensors’ errors${alike.length > 0 ? `; ${listInWords(alike.map((r) => r.quantity))} may be alike` : ''}.`;
}
