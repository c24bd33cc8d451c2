import { chemical } from '../../api/figures/chemical.ts';

const MINUS = '\u2212';
/** `Fe2O3` → `Fe₂O₃`, for reading, as the figures write it; stored names keep plain digits. */
export const showAnalyte = chemical;

function fixed(value: number, decimals: number): string {
  const text = value.toFixed(Math.min(Math.max(decimals, 0), 8));
  return text.startsWith('-') ? MINUS + text.slice(1) : text;
}

/** Decimals in which `step` is one or more of the last digit: 0.1 → 1, 0.02 → 2, 5 → 0. */
export function decimalsOf(step: number): number {
  return step > 0 ? Math.max(0, -Math.floor(Math.log10(step) + 1e-9)) : 0;
}

/** To so many significant digits, never in exponent form for what people weigh and measure. */
export function showSignificant(value: number, digits = 3): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (size < 1e-5 || size >= 1e9) return value.toExponential(digits - 1).replace('-', MINUS);
  return fixed(value, digits - 1 - Math.floor(Math.log10(size)));
}

/** To so many significant digits at most: 0.02 stays 0.02, 1 stays 1. For limits, factors and settings. */
export function showPlain(value: number, digits = 5): string {
  const decimals =
    String(Number(value.toPrecision(digits)))
      .split('.')[1]
      ?.split('e')[0]?.length ?? 0;
  return value !== 0 && Math.abs(value) < 1e-6 ? showSignificant(value, digits) : fixed(value, decimals);
}

export interface Precision {
  /** One step of the last digit as it was written. */
  readonly resolution?: number | null;
  readonly uncertainty?: number | null;
}

/** The figure after ±, to two significant digits at most: 0.5 stays 0.5, 0.1234 becomes 0.12. */
export function showUncertainty(uncertainty: number): string {
  const size = Number(uncertainty.toPrecision(2));
  return fixed(size, (String(size).split('.')[1] ?? '').length);
}

/** A figure with as many digits as its source carries: its last digit as written, else those of its ±. */
export function showValue(value: number, { resolution, uncertainty }: Precision = {}): string {
  if (resolution) return fixed(value, decimalsOf(resolution));
  if (uncertainty) return fixed(value, showUncertainty(uncertainty).split('.')[1]?.length ?? 0);
  return showSignificant(value);
}

/** `1 study`, `3 studies`. */
export function count(n: number, one: string, many = `${one}s`): string {
  return `${n.toLocaleString('en-GB')} ${n === 1 ? one : many}`;
}

/** Reads what a person typed: a decimal comma or point, spaces between thousands; null when it is no number. */
export function readNumber(text: string): number | null {
  const plain = text
    .trim()
    .replace(MINUS, '-')
    .replace(/[\s\u00A0\u202F]/g, '')
    .replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : null;
}

/** One step of the last digit in a number as typed: `36.7` → 0.1, `0,150` → 0.001. */
export function resolutionOf(text: string): number | null {
  if (readNumber(text) === null || /e/i.test(text)) return null;
  const decimals = text.trim().split(/[.,]/)[1]?.length ?? 0;
  return 10 ** -decimals;
}
