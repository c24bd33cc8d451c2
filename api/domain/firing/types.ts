/**
 * Firing: pure functions over thermocouple logs, hand readings and stages. Public functions (all plain JSON in and
 * out, except that chunks hold typed arrays):
 *
 *   logReducer(options: LogOptions): LogReducer { add(chunk), finish(about?) → LogDigest }     log-reducer.ts
 *   summariseLog(digest: LogDigest, settings: SummarySettings): FiringSummary                summary.ts
 *   compareFirings(firings: NamedSummary[]): FiringComparison                                compare.ts
 *   thermocoupleTolerance(celsius, sensor): number                                           thermocouple.ts
 *   readingBounds(reading: HandReading): Bounded                                             hand-reading.ts
 *   trueTemperature(shown, { emissivity, set, micrometres }): number                         infrared.ts
 *   stagesInOrder(stages): AirStage[] (throws on overlap)                                    stages.ts
 *   thinLargestTriangle(seconds, celsius, points): number[] (indices kept)                   thin.ts
 *
 * The file reader is api/intake/logs.ts: readLog(open, choices) → { digest, understanding, problems }.
 */

/** A value with the bounds its error leaves. Same unit for all three. */
export interface Bounded {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export const AIRS = ['oxidising', 'neutral', 'reducing', 'smothered'] as const;
export type Air = (typeof AIRS)[number];

/** A stage of the fire: what air it had, from when to when (seconds since the log's start). */
export interface AirStage {
  readonly air: Air;
  readonly from: number;
  readonly to: number;
  readonly note: string | null;
}

/** A thermocouple: class 1 or 2 of IEC 60584-1 (type K or N), or a stated error in °C, or nothing known. */
export type Sensor =
  | { readonly kind: 'class'; readonly type: 'K' | 'N'; readonly class: 1 | 2 }
  | { readonly kind: 'stated'; readonly celsius: number }
  | { readonly kind: 'unknown' };

export interface LogChannel {
  readonly name: string;
  readonly sensor: Sensor;
}

/** Consecutive readings. `celsius[c][i]` is channel c at `seconds[i]`; NaN where the cell is empty. */
export interface LogChunk {
  readonly seconds: ArrayLike<number>;
  readonly celsius: readonly ArrayLike<number>[];
  /** Row numbers in the file, as a spreadsheet shows them. */
  readonly rows: ArrayLike<number>;
}

export interface LogOptions {
  readonly channels: readonly LogChannel[];
  /** Window of the fastest heating and cooling, seconds; 600 by default. */
  readonly rateWindow?: number;
  /** Points kept for the plot of each channel, about; 2,000 by default. */
  readonly plotPoints?: number;
}

export type LogFlagKind =
  | 'duplicate-time'
  | 'clock-back'
  | 'clock-forward'
  | 'out-of-order'
  | 'restart'
  | 'gap'
  | 'spike'
  | 'missing'
  | 'out-of-range'
  | 'fahrenheit'
  | 'celsius-as-fahrenheit'
  | 'too-fast'
  | 'too-slow';

/** What looks wrong in a log. Readings are never changed; what was left out of the summary is said here. */
export interface LogFlag {
  readonly kind: LogFlagKind;
  readonly channel: string | null;
  /** First row it was seen at, and the time there (seconds since the start); null for the log as a whole. */
  readonly row: number | null;
  readonly seconds: number | null;
  readonly count: number;
  readonly message: string;
}

/** One kept point of a curve. Extremes of every stretch are kept, so peaks are never thinned away. */
export interface CurvePoint {
  readonly seconds: number;
  readonly celsius: number;
}

/** Seconds spent in each whole degree from `from` °C on, with what the sensor's tolerance leaves. */
export interface TimeByTemperature {
  readonly from: number;
  readonly value: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

export interface TimeAbove {
  readonly threshold: number;
  /** Seconds; low: surely above even if the sensor reads high by its tolerance; high: the other way round. */
  readonly seconds: Bounded;
}

export interface Rate {
  /** °C per hour. */
  readonly perHour: Bounded;
  readonly from: number;
  readonly to: number;
}

export interface ChannelDigest {
  readonly channel: LogChannel;
  readonly readings: number;
  readonly spikes: number;
  /** Step of the last digit seen, °C. */
  readonly resolution: number;
  readonly first: CurvePoint | null;
  readonly last: CurvePoint | null;
  readonly peak: CurvePoint | null;
  readonly timeByTemperature: TimeByTemperature;
  readonly fastestHeating: Rate | null;
  readonly fastestCooling: Rate | null;
  readonly curve: readonly CurvePoint[];
  readonly spikePoints: readonly CurvePoint[];
}

/** A log after one pass: what the summary, the plot and the store need; its size does not grow with the log. */
export interface LogDigest {
  readonly rows: number;
  /** Seconds from the first to the last reading. */
  readonly duration: number;
  /** Usual time between readings, seconds. */
  readonly interval: number;
  /** Start on the clock, ISO 8601 without zone, where the file gives one. */
  readonly startedAt: string | null;
  readonly rateWindow: number;
  readonly channels: readonly ChannelDigest[];
  /** Stretches without readings, seconds since the start; the first 200. */
  readonly gaps: readonly { readonly from: number; readonly to: number }[];
  readonly flags: readonly LogFlag[];
}

export interface SummarySettings {
  /** Stages of air, seconds since the start; rates are given for each. */
  readonly stages: readonly AirStage[];
  /** Temperatures between which the heating and cooling rates are averaged, °C, rising; e.g. [100, 300, 600, 800]. */
  readonly rateBands: readonly number[];
  /** Temperatures, °C, whose time above is wanted. At most 12. */
  readonly thresholds: readonly number[];
}

export interface StageSummary {
  readonly stage: AirStage;
  readonly start: Bounded | null;
  readonly end: Bounded | null;
  readonly highest: Bounded | null;
  readonly rate: Rate | null;
}

export interface BandRate {
  readonly from: number;
  readonly to: number;
  readonly direction: 'heating' | 'cooling';
  readonly rate: Rate | null;
}

export interface ChannelSummary {
  readonly name: string;
  readonly sensor: Sensor;
  /** °C with tolerance of the sensor and half a step of the last digit. */
  readonly peak: (Bounded & { readonly seconds: number }) | null;
  readonly tolerance: string;
  readonly timeAbove: readonly TimeAbove[];
  readonly fastestHeating: Rate | null;
  readonly fastestCooling: Rate | null;
  readonly bands: readonly BandRate[];
  readonly stages: readonly StageSummary[];
}

export interface FiringSummary {
  readonly duration: number;
  readonly channels: readonly ChannelSummary[];
  /** Difference between the hottest and the coolest channel's peak, °C; null with one channel. */
  readonly unevenness: Bounded | null;
  readonly flags: readonly LogFlag[];
  readonly sentence: string;
}

export interface NamedSummary {
  readonly name: string;
  readonly summary: FiringSummary;
}

export interface ComparisonRow {
  readonly quantity: string;
  readonly unit: string;
  readonly values: readonly (Bounded | null)[];
  /** Why firings are not judged by it; null where they are. */
  readonly notJudged: string | null;
  /** Whether the bounds of the highest and the lowest are apart; null with fewer than two values, or not judged. */
  readonly differ: boolean | null;
}

export interface FiringComparison {
  readonly firings: readonly string[];
  readonly rows: readonly ComparisonRow[];
  readonly sentence: string;
}

/** A reading taken by hand. */
export type HandReading =
  | {
      readonly kind: 'thermocouple';
      readonly celsius: number;
      readonly resolution: number;
      readonly sensor: Sensor;
    }
  | {
      readonly kind: 'infrared';
      readonly celsius: number;
      readonly resolution: number;
      /** Emissivity the instrument was set to, and what the surface has, with its bounds. */
      readonly set: number;
      readonly emissivity: Bounded;
      /** Wavelength the instrument works at, µm. */
      readonly micrometres: number;
      /** Stated accuracy of the instrument: the greater of °C and share of reading. */
      readonly accuracy: { readonly celsius: number; readonly share: number };
    };
