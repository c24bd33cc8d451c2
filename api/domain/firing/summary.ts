import { RequirementError } from '../requirement.ts';
import { celsiusAt, crossingTime } from './curve-reading.ts';
import { rateBetween } from './rate-window.ts';
import { stagesInOrder } from './stages.ts';
import { summarySentence } from './summary-words.ts';
import { boundsOf, toleranceInWords } from './thermocouple.ts';
import { timeAbove } from './time-profile.ts';
import type {
  AirStage,
  BandRate,
  Bounded,
  ChannelDigest,
  ChannelSummary,
  FiringSummary,
  LogDigest,
  StageSummary,
  SummarySettings,
} from './types.ts';

const MOST_THRESHOLDS = 12;

/**
 * What matters of a firing, each number with the bounds its sensor leaves: peak, time above temperatures, heating and
 * cooling rates (fastest over the log's window, between given temperatures, by stage of air), and how uneven the
 * channels' peaks are. Throws on stages that overlap, on temperatures of bands that do not rise, and on more than
 * twelve temperatures to stay above.
 *
 * @example
 * const log = logReducer({ channels: [{ name: 'top', sensor: { kind: 'class', type: 'K', class: 2 } }] })
 * log.add({ seconds: [0, 3600, 7200], celsius: [[20, 850, 250]], rows: [2, 3, 4] })
 * const summary = summariseLog(log.finish(), { stages: [], rateBands: [100, 600], thresholds: [800] })
 * summary.channels[0].peak // { value: 850, low: 843.125, high: 856.875, seconds: 3600 }
 * summary.channels[0].bands[0].rate.perHour.value // 830
 * summariseLog(log.finish(), { stages: [], rateBands: [600, 100], thresholds: [] }) // throws bands of temperature need to rise; found 600, 100
 */
export function summariseLog(digest: LogDigest, settings: SummarySettings): FiringSummary {
  const stages = stagesInOrder(settings.stages);
  const { rateBands } = settings;
  if (rateBands.some((t, i) => !Number.isFinite(t) || (i > 0 && t <= rateBands[i - 1]!)))
    throw new RequirementError(`bands of temperature need to rise; found ${rateBands.join(', ')}`);
  checkThresholds(settings.thresholds);
  const channels = digest.channels.map((c) => summariseChannel(c, { ...settings, stages }));
  const summary = {
    duration: digest.duration,
    channels,
    unevenness: unevenness(channels),
    flags: digest.flags,
  };
  return { ...summary, sentence: summarySentence(summary) };
}

function checkThresholds(thresholds: readonly number[]): void {
  if (thresholds.length > MOST_THRESHOLDS || thresholds.some((t) => !Number.isFinite(t)))
    throw new RequirementError(
      `a log takes up to ${MOST_THRESHOLDS} temperatures to stay above; found ${thresholds.join(', ')}`,
    );
}

function summariseChannel(
  digest: ChannelDigest,
  { stages, rateBands, thresholds }: SummarySettings,
): ChannelSummary {
  const { channel, peak, resolution } = digest;
  const error = { sensor: channel.sensor, resolution };
  return {
    name: channel.name,
    sensor: channel.sensor,
    peak: peak && { ...boundsOf(peak.celsius, error), seconds: peak.seconds },
    tolerance: toleranceInWords(channel.sensor, peak?.celsius ?? 0),
    timeAbove: thresholds.map((threshold) => ({
      threshold,
      seconds: timeAbove(digest.timeByTemperature, threshold),
    })),
    fastestHeating: digest.fastestHeating,
    fastestCooling: digest.fastestCooling,
    bands: (['heating', 'cooling'] as const).flatMap((d) => bandRates(digest, rateBands, d)),
    stages: stages.map((stage) => stageSummary(digest, stage)),
  };
}

function bandRates(
  { curve, channel, resolution }: ChannelDigest,
  bands: readonly number[],
  direction: BandRate['direction'],
): BandRate[] {
  const error = { sensor: channel.sensor, resolution };
  return bands.slice(1).map((upper, i) => {
    const [from, to] = direction === 'heating' ? [bands[i]!, upper] : [upper, bands[i]!];
    const [begin, end] = [from, to].map((t) => crossingTime(curve, t, direction)) as [
      number | null,
      number | null,
    ];
    const rate =
      begin === null || end === null
        ? null
        : rateBetween({ seconds: begin, celsius: from }, { seconds: end, celsius: to }, error);
    return { from, to, direction, rate };
  });
}

function stageSummary({ curve, channel, resolution }: ChannelDigest, stage: AirStage): StageSummary {
  const error = { sensor: channel.sensor, resolution };
  const [begin, end] = [celsiusAt(curve, stage.from), celsiusAt(curve, stage.to)];
  const inside = curve.filter((p) => p.seconds >= stage.from && p.seconds <= stage.to).map((p) => p.celsius);
  const seen = [...inside, begin, end].filter((t) => t !== null);
  const bounded = (t: number | null): Bounded | null => (t === null ? null : boundsOf(t, error));
  return {
    stage,
    start: bounded(begin),
    end: bounded(end),
    highest: seen.length === 0 ? null : bounded(Math.max(...seen)),
    rate:
      begin === null || end === null
        ? null
        : rateBetween({ seconds: stage.from, celsius: begin }, { seconds: stage.to, celsius: end }, error),
  };
}

/** Hottest peak less coolest; the two sensors may err in opposite ways. */
function unevenness(channels: readonly ChannelSummary[]): Bounded | null {
  const peaks = channels.flatMap((c) => (c.peak ? [c.peak] : []));
  if (peaks.length < 2) return null;
  const hot = peaks.reduce((a, b) => (b.value > a.value ? b : a));
  const cool = peaks.reduce((a, b) => (b.value < a.value ? b : a));
  return {
    value: hot.value - cool.value,
    low: Math.max(0, hot.low - cool.high),
    high: hot.high - cool.low,
  };
}
