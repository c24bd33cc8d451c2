/** How numbers of one cell style are meant to be seen. */
export interface NumberFormat {
  readonly kind: 'number' | 'percent' | 'date';
  /** Decimals that the style always shows; null for General. */
  readonly decimals: number | null;
}

export const GENERAL: NumberFormat = { kind: 'number', decimals: null };

/** Built-in formats by id, ECMA-376 part 1, 18.8.30; all others come as text with the workbook. */
const BUILT_IN: Readonly<Record<number, string>> = {
  0: 'General',
  1: '0',
  2: '0.00',
  3: '#,##0',
  4: '#,##0.00',
  9: '0%',
  10: '0.00%',
  11: '0.00E+00',
  37: '#,##0',
  38: '#,##0',
  39: '#,##0.00',
  40: '#,##0.00',
  48: '##0.0E+0',
  49: '@',
};
const isBuiltInDate = (id: number) =>
  (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 58);

export function formatOf(id: number, code: string | undefined): NumberFormat {
  if (code === undefined && isBuiltInDate(id) && BUILT_IN[id] === undefined)
    return { kind: 'date', decimals: null };
  return readFormat(code ?? BUILT_IN[id] ?? 'General');
}

function readFormat(code: string): NumberFormat {
  const shown = (code.split(';')[0] ?? '').replace(/"[^"]*"|\\.|\[[^\]]*\]|_.|\*./g, '');
  if (/general|@/i.test(shown)) return GENERAL;
  if (/[ymdhs]/i.test(shown)) return { kind: 'date', decimals: null };
  const decimals = /[0#?]\.(0*)/.exec(shown)?.[1]?.length ?? 0;
  if (shown.includes('%')) return { kind: 'percent', decimals };
  return { kind: 'number', decimals: /e[+-]/i.test(shown) ? null : decimals };
}

/**
 * A stored number as text: no digit that the file holds is lost, the noise of binary fractions is (36.7 is often
 * stored as 36.700000000000003), and zeros that the cell's format shows at the end come back (36.7 as `36.70`).
 */
export function numberText(stored: string, format: NumberFormat, epoch1904: boolean): string {
  const value = Number(stored);
  if (stored.trim() === '' || !Number.isFinite(value)) return stored;
  if (format.kind === 'date') return dateText(value, epoch1904);
  if (format.kind === 'percent') return `${digits(value * 100, format.decimals)}%`;
  return digits(value, format.decimals);
}

function digits(value: number, decimals: number | null): string {
  const plain = plainDecimal(Number(value.toPrecision(15)));
  const after = plain.includes('.') ? plain.length - plain.indexOf('.') - 1 : 0;
  const missing = Math.max(0, (decimals ?? 0) - after);
  return missing === 0 ? plain : `${plain}${after === 0 ? '.' : ''}${'0'.repeat(missing)}`;
}

/** Decimal notation also where JavaScript would write an exponent. */
export function plainDecimal(value: number): string {
  const text = String(value);
  const [mantissa = '', exponent] = text.split('e');
  if (exponent === undefined) return text;
  const negative = mantissa.startsWith('-');
  const [whole = '', fraction = ''] = mantissa.replace('-', '').split('.');
  const point = whole.length + Number(exponent);
  const all = whole + fraction;
  const body =
    point <= 0
      ? `0.${'0'.repeat(-point)}${all}`
      : point >= all.length
        ? all.padEnd(point, '0')
        : `${all.slice(0, point)}.${all.slice(point)}`;
  return (negative ? '-' : '') + body;
}

const DAY = 86_400_000;

function dateText(serial: number, epoch1904: boolean): string {
  const start = epoch1904 ? Date.UTC(1904, 0, 1) : Date.UTC(1899, 11, serial < 60 ? 31 : 30);
  const at = new Date(start + Math.round(serial * DAY));
  return Number.isNaN(at.getTime()) ? String(serial) : at.toISOString().slice(0, 10);
}
