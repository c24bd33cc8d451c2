import type { Choices } from './types.ts';

/** A day as YYYY-MM-DD; null where the text does not name one day for certain. */
export function readDate(text: string, order: Choices['dateOrder']): string | null {
  const iso =
    /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ].*)?$/.exec(text) ?? /^(\d{4})[/.](\d{1,2})[/.](\d{1,2})$/.exec(text);
  if (iso) return day(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const local = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})$/.exec(text);
  if (!local) return null;
  const [first, second, year] = [Number(local[1]), Number(local[3]), Number(local[4])];
  const dayFirst = local[2] === '.' || order === 'dayFirst';
  return dayFirst ? day(year, second, first) : day(year, first, second);
}

/** The order that the dates of a column show by a number above 12; null when none does. */
export function dateOrderOf(texts: Iterable<string>): Choices['dateOrder'] | null {
  for (const text of texts) {
    const [, first, second] = /^(\d{1,2})[/-](\d{1,2})[/-]\d{4}$/.exec(text.trim()) ?? [];
    if (Number(first) > 12) return 'dayFirst';
    if (Number(second) > 12) return 'monthFirst';
  }
  return null;
}

function day(year: number, month: number, date: number): string | null {
  const at = new Date(Date.UTC(year, month - 1, date));
  const real = at.getUTCFullYear() === year && at.getUTCMonth() === month - 1 && at.getUTCDate() === date;
  return real && year >= 1800 ? at.toISOString().slice(0, 10) : null;
}
