import { z } from 'zod';
import { bounded, logFlag, MOST_SECONDS, sensor } from './firing-summary.ts';

/** A log's text may be so large; it is read as it streams in and never held. */
export const MOST_LOG_BYTES = 200 * 1024 * 1024;

const TIME_KINDS = [
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

const number = z.number();
const whole = z.number().int();
const column = whole.min(0).max(1000);
const words = z.array(z.string());

const time = z.object({
  kind: z.enum(TIME_KINDS),
  columns: z.array(column).min(1).max(2),
  dateOrder: z.enum(['dayFirst', 'monthFirst']),
});
const channel = z.object({
  column,
  name: z.string().trim().min(1, 'a channel needs a name').max(60),
  unit: z.enum(['°C', '°F']),
  sensor,
});

/** What the sender settles about a log; whatever is absent is taken as understood. */
export const logChoices = z
  .object({
    delimiter: z.enum([',', ';', '\t', '|']),
    decimal: z.enum(['.', ',']),
    firstRow: whole.min(1).max(400),
    time,
    channels: z.array(channel).min(1, 'choose at least one channel').max(16),
    sensor,
    rateWindow: z.number().min(60).max(7200),
  })
  .partial()
  .meta({ id: 'LogChoices' });

/** Seconds from lighting the fire to the log's first reading; negative where the logger ran before. */
export const logBegins = z.coerce.number().min(-MOST_SECONDS).max(MOST_SECONDS);

export const logQuery = z.object({
  /** Of the file, to show which one it was. */
  name: z.string().max(255).default(''),
  /** JSON of LogChoices. */
  choices: z.string().max(8000).optional(),
  begins: logBegins.default(0),
});
export const logMove = z.object({ begins: logBegins }).meta({ id: 'LogMove' });

const understoodChannel = channel.extend({ heading: z.string(), why: z.string(), sure: z.boolean() });
export const logPreview = z
  .object({
    delimiter: z.string(),
    decimal: z.enum(['.', ',']),
    headings: words,
    headerRow: whole.nullable(),
    firstRow: whole,
    /** Cells of the first rows of readings. */
    sample: z.array(words),
    time: time.extend({ why: z.string() }),
    channels: z.array(understoodChannel),
    ignored: z.array(z.object({ column, heading: z.string(), why: z.string() })),
    /** Questions that the file leaves open. */
    doubts: words,
    rows: whole,
    rowsWithoutTime: whole,
    /** Seconds. */
    duration: number,
    startedAt: z.string().nullable(),
    peaks: z.array(z.object({ channel: z.string(), celsius: number.nullable() })),
    flags: z.array(logFlag),
    problems: words,
  })
  .meta({ id: 'LogPreview' });

const point = z.object({ seconds: number, celsius: number });
/** A log as it is kept. Times count from when the fire was lit. */
export const firingLog = z
  .object({
    fileName: z.string(),
    bytes: number,
    sha256: z.string(),
    rows: number,
    interval: number,
    startedAt: z.string().nullable(),
    begins: number,
    channels: z.array(channel.extend({ heading: z.string(), readings: number, spikes: number })),
    problems: words,
    gaps: z.array(z.object({ from: number, to: number })),
    /** Thinned; the extremes of every stretch are kept. Empty in lists. */
    curves: z.array(z.object({ name: z.string(), points: z.array(point), spikes: z.array(point) })),
  })
  .meta({ id: 'FiringLog' });

const firingId = z.uuid();
export const comparedFirings = z
  .object({
    firings: z.array(firingId).min(2, 'a comparison needs at least two firings').max(20),
  })
  .meta({ id: 'ComparedFirings' });
export const firingComparison = z
  .object({
    firings: words,
    rows: z.array(
      z.object({
        quantity: z.string(),
        unit: z.string(),
        values: z.array(bounded.nullable()),
        /** Why firings are not judged by it; null where they are. */
        notJudged: z.string().nullable(),
        differ: z.boolean().nullable(),
      }),
    ),
    sentence: z.string(),
    /** Firings asked for that hold no log, and so are not in it. */
    without: words,
    /** Of the hottest channel of each. */
    curves: z.array(z.object({ name: z.string(), points: z.array(point) })),
  })
  .meta({ id: 'FiringComparison' });

export type LogChoicesAsked = z.infer<typeof logChoices>;
export type LogQuery = z.infer<typeof logQuery>;
export type LogPreview = z.infer<typeof logPreview>;
export type FiringLog = z.infer<typeof firingLog>;
export type FiringComparisonAnswer = z.infer<typeof firingComparison>;
