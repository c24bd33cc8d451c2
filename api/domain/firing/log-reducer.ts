import { RequirementError } from '../requirement.ts';
import { ChannelReducer } from './channel-reducer.ts';
import { LogClock } from './log-clock.ts';
import { LogFlags } from './log-flags.ts';
import { paceDoubt } from './pace-doubt.ts';
import { ResolutionFinder } from './resolution.ts';
import type { LogChunk, LogDigest, LogFlag, LogOptions } from './types.ts';
import { unitDoubt } from './unit-doubt.ts';

const KEPT_GAPS = 200;
/** Rows that the usual step is taken from. */
const FIRST_ROWS = 200;

/** What the reader of the file knows at its end. */
export interface LogEnd {
  /** Start on the clock, ISO 8601 without zone. */
  readonly startedAt?: string | null;
  /** Step of the last digit of each channel, °C; otherwise found from the readings. */
  readonly resolutions?: readonly number[];
}

/** Takes a log in, chunk by chunk. */
export interface LogReducer {
  readonly add: (chunk: LogChunk) => void;
  readonly finish: (end?: LogEnd) => LogDigest;
}

/**
 * Reads a log of any length in one pass and in little memory: peak, time in each degree, fastest heating and cooling over a
 * window, a curve thinned without losing peaks, and flags for what looks wrong (repeated and backward times, clock
 * changes, gaps, spikes, missing and impossible readings, °F taken for °C, minutes
 * taken for seconds). Chunks hold °C and seconds; the usual
 * step is taken from the first 200 rows. Throws on settings that make no sense, chunks of another shape
 * than the channels, and when finished without a reading.
 *
 * @example
 * const log = logReducer({ channels: [{ name: 'top', sensor: { kind: 'unknown' } }] })
 * log.add({ seconds: [0, 600, 1200, 1800], celsius: [[20, 700, 900, 700]], rows: [2, 3, 4, 5] })
 * timeAbove(log.finish().channels[0].timeByTemperature, 800).value // 600
 * log.finish().channels[0].peak // { seconds: 1200, celsius: 900 }
 * logReducer({ channels: [] }) // throws a log needs a channel; found none
 */
export function logReducer(options: LogOptions): LogReducer {
  checkOptions(options);
  const { channels, rateWindow = 600, plotPoints = 2000 } = options;
  const flags = new LogFlags();
  const resolutions = channels.map(() => new ResolutionFinder());
  let state: { clock: LogClock; reducers: ChannelReducer[]; interval: number } | null = null;
  let waiting: LogChunk[] = [];
  const gaps: { from: number; to: number }[] = [];
  let [rows, duration] = [0, 0];
  let digest: LogDigest | null = null;

  const begin = () => {
    const interval = usualStep(waiting);
    const shared = { rateWindow, plotPoints, interval };
    return {
      clock: new LogClock(interval),
      reducers: channels.map((c) => new ChannelReducer(c, shared)),
      interval,
    };
  };

  const add = (chunk: LogChunk) => {
    checkChunk(chunk, channels.length);
    if (state) return take(chunk, state);
    waiting.push(chunk);
    if (waiting.reduce((n, c) => n + c.seconds.length, 0) >= FIRST_ROWS) start();
  };

  const start = () => {
    const begun = begin();
    state = begun;
    for (const chunk of waiting) take(chunk, begun);
    waiting = [];
  };

  const take = (chunk: LogChunk, { clock, reducers }: NonNullable<typeof state>) => {
    for (let i = 0; i < chunk.seconds.length; i++) {
      rows++;
      const row = chunk.rows[i]!;
      const { seconds, flag, gap, jump } = clock.tick(chunk.seconds[i]!);
      if (flag) flags.add(flag, { row, seconds, jump });
      if (seconds === null) continue;
      if (gap && gaps.length < KEPT_GAPS) gaps.push({ from: duration, to: seconds });
      duration = seconds;
      reducers.forEach((reducer, c) => {
        if (gap) reducer.gapBefore(seconds);
        const celsius = chunk.celsius[c]![i]!;
        const { reading, spikes } = reducer.add(seconds, celsius);
        const channel = channels[c]!.name;
        if (reading === 'ok') resolutions[c]!.add(celsius);
        else flags.add(reading, { channel, row, seconds });
        for (const spike of spikes)
          flags.add('spike', { channel, row: row - spikes.length, seconds: spike.seconds });
      });
    }
  };

  const finish: LogReducer['finish'] = (end) => {
    if (digest) return digest;
    if (waiting.some((c) => c.seconds.length > 0)) start();
    if (!state) throw new RequirementError('a log needs a row with a time; found none');
    const ended = state.reducers.map((r, c) => r.finish(end?.resolutions?.[c] ?? resolutions[c]!.step));
    if (ended.every((e) => e.digest.readings === 0))
      throw new RequirementError('a log needs a reading in one channel; found none');
    const doubts = ended.map((e) => unitDoubt(e.digest)).filter((d): d is LogFlag => d !== null);
    // All channels have one clock, so one of them says it for all.
    const pace = ended.map((e) => paceDoubt(e.digest)).find((d) => d !== null);
    digest = {
      rows,
      duration,
      interval: state.interval,
      startedAt: end?.startedAt ?? null,
      rateWindow,
      channels: ended.map((e) => e.digest),
      gaps,
      flags: [...doubts, ...(pace ? [pace] : []), ...flags.all()],
    };
    return digest;
  };
  return { add, finish };
}

function checkOptions({ channels, rateWindow = 600, plotPoints = 2000 }: LogOptions): void {
  if (channels.length === 0) throw new RequirementError('a log needs a channel; found none');
  if (!(rateWindow > 0)) throw new RequirementError(`a rate needs a window above 0 s; found ${rateWindow}`);
  if (!(plotPoints >= 10)) throw new RequirementError(`a curve needs 10 points or more; found ${plotPoints}`);
}

function checkChunk({ seconds, celsius, rows }: LogChunk, channels: number): void {
  if (celsius.length !== channels || [rows, ...celsius].some((c) => c.length !== seconds.length))
    throw new RequirementError(
      `a chunk needs a time, a row and ${channels} readings for each row; found columns of another length or number`,
    );
  const odd = Array.prototype.findIndex.call(seconds, (s: number) => !Number.isFinite(s));
  if (odd >= 0) throw new RequirementError(`a row needs a time; row ${rows[odd]} has none`);
}

/** Middle of the first steps forward. */
function usualStep(chunks: readonly LogChunk[]): number {
  const seconds = chunks.flatMap((c) => Array.from(c.seconds)).slice(0, FIRST_ROWS);
  const steps = seconds
    .slice(1)
    .map((s, i) => s - seconds[i]!)
    .filter((s) => s > 0)
    .sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 1;
}
