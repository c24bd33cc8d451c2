import { hoursMinutes } from './stages.ts';
import type { ChannelDigest, CurvePoint, LogFlag } from './types.ts';

/** A smaller rise says nothing of a firing, °C. */
const RISE = 200;
/**
 * °C per hour. A brushwood fire in the open may rise by 2,000 or 3,000; a wood kiln fired for a week by 7. Common
 * practice, no published source; the bounds leave room on both sides.
 */
const FASTEST = 6000;
const SLOWEST = 4;
const HOUR = 3600;

/**
 * Whether a channel climbs faster than fires usually heat, or slower than kilns are usually fired, from the last
 * reading below a tenth of its rise to the first above nine tenths: a logger left on before the fire or after it says
 * nothing of the pace. A remark with what may cause it, since a sound log can have such a pace as well; null where
 * there is none. A slow kiln read sixty times too fast looks like an open fire, and an open fire read sixty times too
 * slow like a slow kiln: those cannot be seen. A thinned curve can make the rise longer by up to two of its stretches
 * (at most a five-hundredth of the log each), never shorter.
 *
 * @example
 * const at = (seconds, celsius) => ({ seconds, celsius })
 * const channel = { name: 'top' }
 * paceDoubt({ channel, curve: [at(0, 20), at(60, 850)] }).kind // 'too-fast'
 * paceDoubt({ channel, curve: [at(0, 20), at(1200000, 850)] }).kind // 'too-slow'
 * paceDoubt({ channel, curve: [at(0, 20), at(1200000, 25), at(1203600, 850)] }) // null
 */
export function paceDoubt({ channel, curve }: Pick<ChannelDigest, 'channel' | 'curve'>): LogFlag | null {
  const rise = steepPart(curve);
  if (!rise) return null;
  const [from, to] = rise;
  const seconds = to.seconds - from.seconds;
  const perHour = (HOUR * (to.celsius - from.celsius)) / seconds;
  if (perHour <= FASTEST && perHour >= SLOWEST) return null;
  const fast = perHour > FASTEST;
  const told = `${channel.name}: a rise from ${show(from.celsius)} to ${show(to.celsius)} °C in ${span(seconds)} (${about(perHour)} °C per hour)`;
  return {
    ...{ channel: channel.name, row: null, seconds: to.seconds, count: 1 },
    kind: fast ? 'too-fast' : 'too-slow',
    message: fast
      ? `${told}, faster than fires usually heat. A sensor put into a hot fire reads so; so do minutes read as seconds (as minutes it took ${span(60 * seconds)}).`
      : `${told}, slower than kilns are usually fired. A kiln warmed over weeks reads so; so do seconds read as minutes (as seconds it took ${span(seconds / 60)}).`,
  };
}

/** Last point below a tenth of the rise to the peak, and first above nine tenths after it. */
function steepPart(curve: readonly CurvePoint[]): readonly [CurvePoint, CurvePoint] | null {
  const peak = curve.reduce((best, one, i) => (one.celsius > curve[best]!.celsius ? i : best), 0);
  const way = curve.slice(0, peak + 1);
  const low = way.reduce((least, one) => Math.min(least, one.celsius), Infinity);
  const rise = (curve[peak]?.celsius ?? 0) - low;
  if (!(rise >= RISE)) return null;
  const begun = way.findLastIndex((one) => one.celsius < low + rise / 10);
  const from = way[begun]!;
  const to = way.slice(begun).find((one) => one.celsius > low + 0.9 * rise)!;
  return to.seconds > from.seconds ? [from, to] : null;
}

const span = (seconds: number) => (seconds < 120 ? `${Math.round(seconds)} s` : `${hoursMinutes(seconds)} h`);
const show = (celsius: number) => Math.round(celsius).toLocaleString('en-GB').replace('-', '−');
const about = (rate: number) => rate.toLocaleString('en-GB', { maximumSignificantDigits: 2 });
