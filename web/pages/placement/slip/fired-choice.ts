import type { AnalysedRef } from '../../../../api/contract/slip-reading.ts';
import { readNumber } from '../../../parts/numbers.ts';

/** A fired batch as it is predicted: one of the study's, or typed in. */
export interface FiredChoice {
  readonly batch: string | null;
  readonly typed: string;
  readonly relativeError: number | null;
}
export const NO_TARGET: FiredChoice = { batch: null, typed: '', relativeError: null };

/** `PbO 60, SiO2 32` → amounts; null where a piece is no oxide with an amount. */
export function readComposition(text: string): Record<string, number> | null {
  const pieces = text.split(/[;\n]|,(?=\s*[A-Z])/).map((piece) => piece.trim());
  const found: Record<string, number> = {};
  for (const piece of pieces.filter((one) => one !== '')) {
    const [, oxide, amount] = /^([A-Z][A-Za-z0-9]*)\s*[:=\s]\s*(\S+)$/.exec(piece) ?? [];
    const value = amount === undefined ? null : readNumber(amount.replace(/%$/, ''));
    if (oxide === undefined || value === null || value < 0) return null;
    found[oxide] = value;
  }
  return Object.keys(found).length > 0 ? found : null;
}

/** As the service is asked; null until there is something to ask with. */
export function targetOf({ batch, typed, relativeError }: FiredChoice): AnalysedRef | null {
  if (batch !== null) return { kind: 'batch', batch };
  const oxides = readComposition(typed);
  if (oxides === null) return null;
  const error = relativeError === null ? null : relativeError / 100;
  return { kind: 'typed', label: 'the batch as typed', oxides, relativeError: error || null };
}
