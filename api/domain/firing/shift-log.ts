import type { ChannelDigest, CurvePoint, LogDigest, Rate } from './types.ts';

/**
 * A log on another clock: all its times later by so many seconds (earlier where negative), so that a logger switched
 * on before or after the fire was lit lies beside stages and readings, which count from lighting.
 *
 * @example
 * const log = logReducer({ channels: [{ name: 'top', sensor: { kind: 'unknown' } }] })
 * log.add({ seconds: [0, 600, 1200], celsius: [[20, 700, 300]], rows: [2, 3, 4] })
 * shiftLog(log.finish(), -300).channels[0].peak // { seconds: 300, celsius: 700 }
 */
export function shiftLog(digest: LogDigest, by: number): LogDigest {
  if (by === 0) return digest;
  const point = ({ seconds, celsius }: CurvePoint): CurvePoint => ({ seconds: seconds + by, celsius });
  const maybe = (p: CurvePoint | null) => p && point(p);
  const rate = (r: Rate | null) => r && { ...r, from: r.from + by, to: r.to + by };
  const channel = (c: ChannelDigest): ChannelDigest => ({
    ...c,
    first: maybe(c.first),
    last: maybe(c.last),
    peak: maybe(c.peak),
    fastestHeating: rate(c.fastestHeating),
    fastestCooling: rate(c.fastestCooling),
    curve: c.curve.map(point),
    spikePoints: c.spikePoints.map(point),
  });
  return {
    ...digest,
    channels: digest.channels.map(channel),
    gaps: digest.gaps.map(({ from, to }) => ({ from: from + by, to: to + by })),
    flags: digest.flags.map((f) => (f.seconds === null ? f : { ...f, seconds: f.seconds + by })),
  };
}
