import { hoursMinutes } from './stages.ts';
import type { ChannelDigest, LogFlag } from './types.ts';

/** A smaller rise says nothing of a firing, °C. */
const RISE = 200;
/**
 * From the first reading to the peak, °C per hour. A brushwood fire in the open may rise by 2,000 or 3,000; a wood kiln
 * fired for a week by 7. Common practice, no published source; the bounds leave room on both sides.
 */
const FASTEST = 6000;
const SLOWEST = 4;
const HOUR = 3600;

/**
 * Whether a channel climbs to its peak faster than a fire heats, or slower than a kiln is fired: minutes read as
 * seconds, say, or seconds read as minutes. A doubt for a person to settle; null where there is none. A slow kiln read
 * sixty times too fast looks like an open fire, and an open fire read sixty times too slow like a slow kiln: those
 * cannot be seen.
 *
 * @example
 * const at = (seconds, celsius) => ({ seconds, celsius })
 * const channel = { name: 'top' }
 * paceDoubt({ channel, first: at(0, 20), peak: at(60, 850) }).kind // 'too-fast'
 * paceDoubt({ channel, first: at(0, 20), peak: at(1200000, 850) }).kind // 'too-slow'
 * paceDoubt({ channel, first: at(0, 20), peak: at(3600, 850) }) // null
 */
export function paceDoubt({
  channel,
  first,
  peak,
}: Pick<ChannelDigest, 'channel' | 'first' | 'peak'>): LogFlag | null {
  if (!first || !peak || peak.celsius - first.celsius < RISE || peak.seconds <= first.seconds) return null;
  const seconds = peak.seconds - first.seconds;
  const perHour = (HOUR * (peak.celsius - first.celsius)) / seconds;
  if (perHour <= FASTEST && perHour >= SLOWEST) return null;
  const fast = perHour > FASTEST;
  const rise = `${channel.name}: a rise from ${show(first.celsius)} to ${show(peak.celsius)} °C in ${span(seconds)} (${about(perHour)} °C per hour)`;
  return {
    ...{ channel: channel.name, row: null, seconds: peak.seconds, count: 1 },
    kind: fast ? 'too-fast' : 'too-slow',
    message: fast
      ? `${rise} is faster than a fire heats. Were minutes read as seconds? As minutes it took ${span(60 * seconds)}. Check how times are written.`
      : `${rise} is slower than a kiln is fired. Were seconds read as minutes? As seconds it took ${span(seconds / 60)}. Check how times are written.`,
  };
}

const span = (seconds: number) => (seconds < 120 ? `${Math.round(seconds)} s` : `${hoursMinutes(seconds)} h`);
const show = (celsius: number) => Math.round(celsius).toLocaleString('en-GB').replace('-', '−');
const about = (rate: number) => rate.toLocaleString('en-GB', { maximumSignificantDigits: 2 });
