import type { ChannelDigest, LogFlag } from './types.ts';

/** A fire in the open or in a small kiln seldom goes beyond; type K ends at 1,300 °C (IEC 60584-1:2013). */
const TOO_HOT = 1300;
const HOT = 1150;
/** Air on the day of a firing, °C. */
const MILD = { low: -15, high: 40 };
/** Peaks that a pottery fire is likely to reach, °C. */
const LIKELY = { low: 350, high: 1250 };

const toCelsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;
const toFahrenheit = (celsius: number) => 1.8 * celsius + 32;
const within = (value: number, { low, high }: { low: number; high: number }) => value >= low && value <= high;

/**
 * Whether a channel's numbers look like °F taken for °C (too hot for a pottery fire, or started warmer than air), or
 * like °C taken for °F (started below freezing and stayed cool, yet sensible the other way). A doubt for a person to
 * settle; null where there is none.
 *
 * @example
 * const at = (celsius) => ({ seconds: 0, celsius })
 * unitDoubt({ channel: { name: 'top' }, first: at(68), peak: at(1562) }).kind // 'fahrenheit'
 * unitDoubt({ channel: { name: 'top' }, first: at(20), peak: at(850) }) // null
 */
export function unitDoubt({
  channel,
  first,
  peak,
}: Pick<ChannelDigest, 'channel' | 'first' | 'peak'>): LogFlag | null {
  if (!first || !peak) return null;
  const [start, top] = [first.celsius, peak.celsius];
  const asCelsius = { start: toCelsius(start), top: toCelsius(top) };
  const tooHot = top > TOO_HOT || (top > HOT && start > MILD.high);
  if (tooHot && within(asCelsius.top, LIKELY))
    return doubt('fahrenheit', channel.name, {
      seconds: peak.seconds,
      message: `${channel.name}: a start at ${show(start)} °C and a peak of ${show(top)} °C are implausible; read as °F they are ${show(asCelsius.start)} °C and ${show(asCelsius.top)} °C. Check the unit.`,
    });
  const shown = { start: toFahrenheit(start), top: toFahrenheit(top) };
  const tooCold = start < 0 && top < 700;
  if (tooCold && within(shown.start, MILD) && within(shown.top, { ...LIKELY, low: 550 }))
    return doubt('celsius-as-fahrenheit', channel.name, {
      seconds: peak.seconds,
      message: `${channel.name}: taken as °F the log starts at ${show(start)} °C and peaks at ${show(top)} °C; its numbers, ${show(shown.start)} and ${show(shown.top)}, are likelier °C. Check the unit.`,
    });
  return null;
}

function doubt(
  kind: LogFlag['kind'],
  channel: string,
  { seconds, message }: { seconds: number; message: string },
): LogFlag {
  return { kind, channel, row: null, seconds, count: 1, message };
}

const show = (celsius: number) => Math.round(celsius).toLocaleString('en-GB').replace('-', '−');
