import type { TimeChoice, TimeKind } from './types.ts';

const MINUTE = 60;
const HOUR = 3600;
const DAY = 86_400;
/** Days from 1899-12-30, where spreadsheets count from, to 1970-01-01. */
const SPREADSHEET_EPOCH = 25_569;

const ELAPSED = /^(?:(\d+)[.d ]\s*)?(\d+):(\d{1,2})(?::(\d{1,2}(?:[.,]\d+)?))?$/;
const MINUTES_SECONDS = /^(\d+):(\d{1,2}(?:[.,]\d+)?)$/;
const OF_DAY = /^(\d{1,2})[:.h](\d{2})(?:[:.](\d{2}(?:[.,]\d+)?))?\s*([ap])?\.?m?\.?$/i;
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/;
const YEAR_LAST = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})$/;
const ZONE = /(Z|[+-]\d{2}:?\d{2})$/i;

const number = (text: string | undefined) => Number((text ?? '0').replace(',', '.'));

/** Seconds in h:mm, h:mm:ss or d.hh:mm:ss; null where it is none. */
export function elapsedSeconds(text: string): number | null {
  const m = ELAPSED.exec(text.trim());
  if (!m || Number(m[3]) > 59) return null;
  return number(m[1]) * DAY + number(m[2]) * HOUR + number(m[3]) * MINUTE + number(m[4]);
}

/** Seconds since midnight of a time of day, with or without am and pm; null where it is none. */
export function secondsOfDay(text: string): number | null {
  const m = OF_DAY.exec(text.trim());
  if (!m) return null;
  const [hour, minute, second] = [number(m[1]), number(m[2]), number(m[3])];
  const half = m[4]?.toLowerCase();
  if (minute > 59 || second >= 60 || hour > (half ? 12 : 23) || (half && hour === 0)) return null;
  return ((half ? (hour % 12) + (half === 'p' ? 12 : 0) : hour) * 60 + minute) * 60 + second;
}

/** Days since 1970-01-01 of a date; null where it is none. */
export function daysOfDate(text: string, order: TimeChoice['dateOrder']): number | null {
  const first = YEAR_FIRST.exec(text);
  if (first) return days(Number(first[1]), Number(first[2]), Number(first[3]));
  const last = YEAR_LAST.exec(text);
  if (!last) return null;
  const year = Number(last[3]) < 100 ? 2000 + Number(last[3]) : Number(last[3]);
  const [a, b] = [Number(last[1]), Number(last[2])];
  return order === 'dayFirst' ? days(year, b, a) : days(year, a, b);
}

function days(year: number, month: number, day: number): number | null {
  const at = new Date(Date.UTC(year, month - 1, day));
  const real = at.getUTCMonth() === month - 1 && at.getUTCDate() === day;
  return real ? at.getTime() / 1000 / DAY : null;
}

/** Seconds since 1970 of date and time in one text, on the clock of the file, or of UTC where a zone stands beside it. */
export function clockSeconds(text: string, order: TimeChoice['dateOrder']): number | null {
  const trimmed = text.trim();
  const cut = trimmed.search(/[T\s]/);
  if (cut < 0) return null;
  const day = daysOfDate(trimmed.slice(0, cut).replace(/,$/, ''), order);
  if (day === null) return null;
  const rest = trimmed.slice(cut + 1).trim();
  const zone = ZONE.exec(rest);
  const time = secondsOfDay(zone ? rest.slice(0, zone.index) : rest);
  return time === null ? null : day * DAY + time - (zone ? zoneSeconds(zone[0]) : 0);
}

function zoneSeconds(zone: string): number {
  if (/z/i.test(zone)) return 0;
  const digits = zone.replace(/\D/g, '');
  const size = Number(digits.slice(0, 2)) * HOUR + Number(digits.slice(2)) * MINUTE;
  return zone.startsWith('-') ? -size : size;
}

const SCALE: Partial<Record<TimeKind, number>> = {
  seconds: 1,
  milliseconds: 1e-3,
  minutes: MINUTE,
  hours: HOUR,
  'epoch-seconds': 1,
  'epoch-milliseconds': 1e-3,
  'spreadsheet-days': DAY,
};

/** Reads the time of row after row, in seconds from some start; null where a row has none. */
export class TimeReader {
  readonly #choice: TimeChoice;
  readonly #number: (text: string) => number;
  #lastOfDay: number | null = null;
  #midnights = 0;

  constructor(choice: TimeChoice, number: (text: string) => number) {
    this.#choice = choice;
    this.#number = number;
  }

  read(cells: readonly string[]): number | null {
    const { kind, columns, dateOrder } = this.#choice;
    const text = (cells[columns[0]!] ?? '').trim();
    if (text === '') return null;
    const scale = SCALE[kind];
    if (scale !== undefined) {
      const value = this.#number(text);
      return Number.isFinite(value) ? value * scale : null;
    }
    if (kind === 'elapsed') return elapsedSeconds(text);
    if (kind === 'minutes-seconds') {
      const m = MINUTES_SECONDS.exec(text);
      return m ? number(m[1]) * MINUTE + number(m[2]) : null;
    }
    if (kind === 'time-of-day') return this.#pastMidnight(secondsOfDay(text));
    if (columns.length === 1) return clockSeconds(text, dateOrder);
    const day = daysOfDate(text, dateOrder);
    const time = secondsOfDay(cells[columns[1]!] ?? '');
    return day === null || time === null ? null : day * DAY + time;
  }

  #pastMidnight(ofDay: number | null): number | null {
    if (ofDay === null) return null;
    if (this.#lastOfDay !== null && this.#lastOfDay - ofDay > DAY / 2) this.#midnights++;
    this.#lastOfDay = ofDay;
    return this.#midnights * DAY + ofDay;
  }
}

/** Start on the clock as ISO 8601 without zone, where the kind of time has a date. */
export function startOnClock(kind: TimeKind, seconds: number | null): string | null {
  if (seconds === null) return null;
  const since1970 = kind === 'spreadsheet-days' ? seconds - SPREADSHEET_EPOCH * DAY : seconds;
  const dated = kind === 'clock' || kind.startsWith('epoch') || kind === 'spreadsheet-days';
  if (!dated || !(Math.abs(since1970) < 4e10)) return null;
  return new Date(since1970 * 1000).toISOString().slice(0, 19);
}
