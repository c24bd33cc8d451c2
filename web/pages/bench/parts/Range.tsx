import type { Span } from '../../../../api/domain/batch/types.ts';
import { decimalsOf, showSignificant } from '../../../parts/numbers.ts';

/** Two figures written to the digits that tell them apart. */
export function showRange({ low, high }: Span): string {
  const size = Math.max(Math.abs(low), Math.abs(high));
  const step = 10 ** (Math.floor(Math.log10(size || 1)) - 2);
  const decimals = decimalsOf(Math.min(Math.max(step, 1e-6), 1));
  const [from, to] = [low, high].map((x) => (Math.abs(x) < step / 2 ? 0 : x).toFixed(decimals));
  return from === to ? from! : `${from} to ${to}`;
}

/** What is known of a figure only as a range. */
export function Range({ span, unit }: { readonly span: Span; readonly unit?: string }) {
  return (
    <span className="number">
      {showRange(span).replaceAll('-', '\u2212')}
      {unit && <span className="unit"> {unit}</span>}
    </span>
  );
}

export const grams = (g: number) => showSignificant(Math.abs(g) < 5e-4 ? 0 : g, 4);
