import { MAX_FIGURE_CHARACTERS } from './limits.ts';

/** A figure as written: its value and one step of its last digit. */
export interface Figure {
  readonly value: number;
  readonly resolution: number;
}

export type DecimalMark = '.' | ',';

const PLAIN = {
  '.': /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d{1,3})?$/,
  ',': /^[+-]?(?:\d+(?:,\d*)?|,\d+)(?:[eE][+-]?\d{1,3})?$/,
};
/** Thousands set apart: by blanks or apostrophes always, by the other mark where it cannot be a decimal mark. */
const SPACED = /^([+-]?\d{1,3})((?:[ '’]\d{3})+)(?=$|[.,])/;
const GROUPED = {
  '.': /^[+-]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/,
  ',': /^[+-]?[1-9]\d{0,2}(?:(?:\.\d{3}){2,}(?:,\d+)?|\.\d{3},\d+)$/,
};

/** Blanks of every width become one kind, and every minus sign the plain one. */
export function tidyNumber(text: string): string {
  return text
    .replace(/[\u00a0\u2000-\u200a\u202f\u205f\u3000]/g, ' ')
    .replace(/[\u2212\u2012\u2013\ufe63\uff0d](?=\s?[\d.,])/g, '-')
    .trim();
}

/** Reads a figure under the file's decimal mark; null where the text is none, or where it could be two. */
export function readNumber(text: string, decimal: DecimalMark): Figure | null {
  if (PLAIN[decimal].test(text)) return figureOf(text.replace(',', '.'));
  const spaced = SPACED.exec(text);
  const joined = spaced ? spaced[1] + spaced[2]!.replace(/\D/g, '') + text.slice(spaced[0].length) : text;
  if (spaced && PLAIN[decimal].test(joined)) return figureOf(joined.replace(',', '.'));
  if (!GROUPED[decimal].test(joined)) return null;
  return figureOf(
    decimal === '.' ? joined.replaceAll(',', '') : joined.replaceAll('.', '').replace(',', '.'),
  );
}

function figureOf(plain: string): Figure | null {
  const [mantissa = '', exponent = '0'] = plain.toLowerCase().split('e');
  const point = mantissa.indexOf('.');
  const decimals = point < 0 ? 0 : mantissa.length - point - 1;
  const value = Number(plain);
  const resolution = Number(`1e${Number(exponent) - decimals}`);
  return Number.isFinite(value) && resolution > 0 ? { value, resolution } : null;
}

const POINT_ONLY = /^[<>±\s+-]*(?:\d+\.(?:\d{1,2}|\d{4,})|0?\.\d+|\d{4,}\.\d+|0\.\d+)(?=$|[\s±(%])/;
const COMMA_ONLY = /^[<>±\s+-]*(?:\d+,(?:\d{1,2}|\d{4,})|0?,\d+|\d{4,},\d+|0,\d+)(?=$|[\s±(%])/;
const GROUPS_THEN_POINT = /^[<\s+-]*\d{1,3}(?:,\d{3})+\.\d+(?=$|[\s±(%])/;
const GROUPS_THEN_COMMA = /^[<\s+-]*\d{1,3}(?:\.\d{3})+,\d+(?=$|[\s±(%])/;
const EITHER = /^[<\s+-]*[1-9]\d{0,2}[.,]\d{3}(?=$|[\s±(%])/;

export interface DecimalEvidence {
  readonly points: number;
  readonly commas: number;
  /** Figures such as 1,234 or 1.234 that could be read both ways; by the mark that they hold. */
  readonly eitherPoint: number;
  readonly eitherComma: number;
}

/** Counts what figures say of the decimal mark. */
export function decimalEvidence(cells: Iterable<string>): DecimalEvidence {
  const counts = { points: 0, commas: 0, eitherPoint: 0, eitherComma: 0 };
  for (const raw of cells) {
    if (raw.length > MAX_FIGURE_CHARACTERS) continue;
    const cell = tidyNumber(raw);
    if (POINT_ONLY.test(cell) || GROUPS_THEN_POINT.test(cell)) counts.points++;
    else if (COMMA_ONLY.test(cell) || GROUPS_THEN_COMMA.test(cell)) counts.commas++;
    else if (EITHER.test(cell)) counts[cell.includes(',') ? 'eitherComma' : 'eitherPoint']++;
  }
  return counts;
}
