import { clockSeconds, daysOfDate, elapsedSeconds, secondsOfDay } from './times.ts';
import type { TimeChoice, TimeKind } from './types.ts';

/** One column of the first rows. */
export interface SampleColumn {
  readonly index: number;
  readonly heading: string;
  /** Cells that hold something. */
  readonly cells: readonly string[];
  readonly numbers: readonly number[];
}

export interface FoundTime extends TimeChoice {
  readonly why: string;
  readonly doubts: readonly string[];
}

const TIME_WORD =
  /\b(time|times?tamp|clock|elapsed|date|zeit|uhrzeit|datum|temps|heure|fecha|hora|tiempo|ora|tempo|data|seconds?|secs?|minutes?|mins?|hours?|hrs?|ms)\b|^\s*[tsh]\s*(?:[[(/].*)?$/i;
const DATE_WORD = /\b(date|datum|fecha|data|jour)\b/i;
const ELAPSED_WORD = /elapsed|duration|since|relative|dauer|verstrichen|run ?time/i;
const RECORD_WORD = /^\s*(?:#|no\.?|nr\.?|n°|index|record|sample|scan|row|point|id)\s*#?\s*$/i;

const most = (cells: readonly string[], test: (cell: string) => boolean) =>
  cells.length > 0 && cells.filter(test).length >= 0.8 * cells.length;

/** Whether a column only counts its rows. */
export function isRecordNumber({ heading, numbers, cells }: SampleColumn): boolean {
  if (RECORD_WORD.test(heading)) return true;
  const counts = numbers.length === cells.length && numbers.length > 3;
  return counts && !TIME_WORD.test(heading) && heading !== '' && /\b(?:no|nr|count|record)\b/i.test(heading);
}

/** The order that dates show by a number above 12; day first, and a doubt, where none does. */
function dateOrder(texts: readonly string[]): { order: TimeChoice['dateOrder']; open: boolean } {
  const pairs = texts.map((t) => /^(\d{1,2})[-/.](\d{1,2})[-/.]/.exec(t.trim())).filter((m) => m !== null);
  if (pairs.some((m) => Number(m[1]) > 12)) return { order: 'dayFirst', open: false };
  if (pairs.some((m) => Number(m[2]) > 12)) return { order: 'monthFirst', open: false };
  return { order: 'dayFirst', open: pairs.some((m) => m[1] !== m[2]) && !/\./.test(texts[0] ?? '') };
}

/** Finds the column or columns of times, and how they are written; null where there is none. */
export function findTime(columns: readonly SampleColumn[]): FoundTime | null {
  const usable = columns.filter((c) => !isRecordNumber(c) && c.cells.length > 0);
  const ranked = [
    ...usable.filter((c) => TIME_WORD.test(c.heading)),
    ...usable.filter((c) => !TIME_WORD.test(c.heading)),
  ];
  for (const column of ranked) {
    const found = asText(column, usable) ?? (TIME_WORD.test(column.heading) ? asNumber(column) : null);
    if (found) return found;
  }
  const rising = usable.find((c) => isRising(c));
  return rising ? asNumber(rising) : null;
}

const isRising = ({ numbers, cells }: SampleColumn) =>
  numbers.length === cells.length &&
  numbers.length > 2 &&
  numbers.every((v, i) => i === 0 || v > numbers[i - 1]!);

function asText(column: SampleColumn, all: readonly SampleColumn[]): FoundTime | null {
  const { cells, heading, index } = column;
  const { order, open } = dateOrder(cells);
  const doubts = open ? [`Dates such as ${cells[0]} can be read two ways; they were read day first.`] : [];
  const base = { columns: [index], dateOrder: order };
  if (most(cells, (c) => clockSeconds(c, order) !== null))
    return { ...base, kind: 'clock', why: `“${cells[0]}” is a date with a time`, doubts };
  if (most(cells, (c) => daysOfDate(c.trim(), order) !== null)) {
    const time = all.find((c) => c !== column && most(c.cells, (v) => secondsOfDay(v) !== null));
    if (!time) return null;
    const why = `“${cells[0]}” is a date and “${time.cells[0]}” beside it a time of day`;
    return { ...base, columns: [index, time.index], kind: 'clock', why, doubts };
  }
  if (!most(cells, (c) => c.includes(':') && elapsedOrOfDay(c))) return null;
  const date = all.find((c) => most(c.cells, (v) => daysOfDate(v.trim(), dateOrder(c.cells).order) !== null));
  if (date && DATE_WORD.test(date.heading)) return asText(date, all);
  return { ...base, ...withoutDate(cells, heading) };
}

const elapsedOrOfDay = (cell: string) => elapsedSeconds(cell) !== null || secondsOfDay(cell) !== null;

/** Times with colons and no date: since the start, or of the day. */
function withoutDate(
  cells: readonly string[],
  heading: string,
): { kind: TimeKind; why: string; doubts: string[] } {
  const short = most(cells, (c) => c.trim().split(':').length === 2);
  if (short && /\bm+\s*:\s*s+\b/i.test(heading))
    return { kind: 'minutes-seconds', why: `the heading says ${heading}`, doubts: [] };
  const first = elapsedSeconds(cells[0]!);
  const noon = cells.some((c) => /[ap]\.?m/i.test(c));
  const since = !noon && first !== null && (ELAPSED_WORD.test(heading) || first <= 60);
  const tail = short
    ? ['Times of two figures were read as hours and minutes; choose minutes and seconds if they are.']
    : [];
  return since
    ? { kind: 'elapsed', why: `“${cells[0]}” counts from the start`, doubts: tail }
    : { kind: 'time-of-day', why: `“${cells[0]}” is a time of day without a date`, doubts: [] };
}

const UNITS: readonly (readonly [RegExp, TimeKind])[] = [
  [/\b(?:ms|millis\w*)\b/i, 'milliseconds'],
  [/\b(?:s|secs?|seconds?|sekunden|secondes|segundos)\b/i, 'seconds'],
  [/\b(?:min|mins|minutes?|minuten|minutos)\b/i, 'minutes'],
  [/\b(?:h|hrs?|hours?|std|stunden|heures|horas)\b/i, 'hours'],
];

function asNumber({ index, heading, numbers, cells }: SampleColumn): FoundTime | null {
  if (numbers.length < 0.8 * cells.length || numbers.length === 0) return null;
  const made = (kind: TimeKind, why: string, doubts: readonly string[] = []): FoundTime => ({
    kind,
    columns: [index],
    dateOrder: 'dayFirst',
    why,
    doubts,
  });
  const first = numbers[0]!;
  if (first > 1e12 && first < 1e13)
    return made('epoch-milliseconds', `${first} counts milliseconds since 1970`);
  if (first > 1e9 && first < 5e9) return made('epoch-seconds', `${first} counts seconds since 1970`);
  const named = UNITS.find(([word]) => word.test(heading));
  if (named) return made(named[1], `the heading says ${heading.trim()}`);
  if (first > 30_000 && first < 80_000 && numbers.at(-1)! - first < 60)
    return made('spreadsheet-days', `${first} counts days as a spreadsheet does`);
  return made('seconds', 'no unit stands in the heading', [
    `No unit stands beside the times (${heading.trim() || `column ${index + 1}`}); they were taken as seconds.`,
  ]);
}
