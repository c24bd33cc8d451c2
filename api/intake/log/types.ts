import type { LogDigest, Sensor } from '../../domain/firing/types.ts';
import type { DecimalMark } from '../number.ts';
import type { Problem } from '../types.ts';

export const TIME_KINDS = [
  'seconds',
  'milliseconds',
  'minutes',
  'hours',
  'elapsed',
  'minutes-seconds',
  'time-of-day',
  'clock',
  'epoch-seconds',
  'epoch-milliseconds',
  'spreadsheet-days',
] as const;

/**
 * How times are written. `elapsed`: h:mm, h:mm:ss or d.hh:mm:ss since the start; `minutes-seconds`: m:ss; `clock`:
 * date and time in one column or two; `time-of-day`: without a date, past midnight from one row to the next.
 */
export type TimeKind = (typeof TIME_KINDS)[number];

export interface TimeChoice {
  readonly kind: TimeKind;
  /** One column, or for `clock` a column of dates and one of times. Counted from 0. */
  readonly columns: readonly number[];
  readonly dateOrder: 'dayFirst' | 'monthFirst';
}

export interface ChannelChoice {
  readonly column: number;
  readonly name: string;
  readonly unit: '°C' | '°F';
  readonly sensor: Sensor;
}

/** What a person may settle; whatever is absent is taken as understood. */
export interface LogChoices {
  readonly delimiter?: string;
  readonly decimal?: DecimalMark;
  /** Row number of the first reading, as a spreadsheet counts. */
  readonly firstRow?: number;
  readonly time?: TimeChoice;
  readonly channels?: readonly ChannelChoice[];
  /** Sensor of every channel that says nothing else. */
  readonly sensor?: Sensor;
  /** Seconds over which the fastest heating is sought; 600 where absent. */
  readonly rateWindow?: number;
}

export interface UnderstoodChannel extends ChannelChoice {
  readonly heading: string;
  readonly why: string;
  readonly sure: boolean;
}

/** How a log was understood, and why. */
export interface LogUnderstanding {
  readonly delimiter: string;
  readonly decimal: DecimalMark;
  readonly headings: readonly string[];
  /** Row numbers as a spreadsheet counts; null without headings. */
  readonly headerRow: number | null;
  readonly firstRow: number;
  /** Cells of the first rows of readings. */
  readonly sample: readonly (readonly string[])[];
  readonly time: TimeChoice & { readonly why: string };
  readonly channels: readonly UnderstoodChannel[];
  /** Columns left aside, with the reason. */
  readonly ignored: readonly { readonly column: number; readonly heading: string; readonly why: string }[];
  /** Questions that the file leaves open. */
  readonly doubts: readonly string[];
}

export interface ReadLog {
  readonly understanding: LogUnderstanding;
  readonly digest: LogDigest;
  readonly encoding: string;
  readonly rows: number;
  /** Rows without a time that could be read; they are left out and named among the problems. */
  readonly rowsWithoutTime: number;
  readonly problems: readonly Problem[];
}
