import { convertForm } from '../chemistry/oxides.ts';
import { figureText } from './amount.ts';
import type { Amounts, NormalisedAnalysis } from './types.ts';

/**
 * Raw totals usual for archaeological glass by EDS before normalisation: published practice (98–102 %). XRF and AAS
 * often stay lower, since fewer elements are measured and ignition loss is not: common practice, no published source.
 */
export const USUAL_TOTAL = { low: 98, high: 102 } as const;
/** Totals so far out that units or columns are the first suspects: our own choice. */
export const SUSPECT_TOTAL = { low: 60, high: 110 } as const;

/** What a total is judged by. */
export interface TotalContext {
  /** Amounts before closure, for what is missing from them. */
  readonly amounts: Amounts;
  /** Atom % sets no mass scale, so its total says nothing. */
  readonly relative: boolean;
  /** What else may explain a total, as sentences. */
  readonly hints: readonly string[];
}

/**
 * Judges a raw analytical total (wt%) before closure: low under 98, high over 102, and says what commonly explains
 * it: silica or ignition loss not measured, iron stated as Fe2O3, units mistaken. Unknown for atom %.
 * @example
 * describeTotal(91.8, { amounts: {}, relative: false, hints: [] }).judgement // 'low'
 * describeTotal(100.2, { amounts: {}, relative: false, hints: [] }).judgement // 'usual'
 */
export function describeTotal(rawTotal: number, context: TotalContext): NormalisedAnalysis['total'] {
  if (context.relative)
    return {
      judgement: 'unknown',
      message: 'Atom % sets no mass scale: the oxides were scaled to sum to 100.',
    };
  const judgement = rawTotal < USUAL_TOTAL.low ? 'low' : rawTotal > USUAL_TOTAL.high ? 'high' : 'usual';
  const head = `The oxides sum to ${figureText(rawTotal)} wt% before closure${judgement === 'usual' ? ', within the usual 98–102' : `: ${judgement} (98–102 is usual)`}.`;
  const reasons = [...reasonsFor(judgement, rawTotal, context.amounts), ...context.hints];
  return { judgement, message: [head, ...reasons].join(' ') };
}

function reasonsFor(judgement: string, rawTotal: number, amounts: Amounts): string[] {
  if (judgement === 'low')
    return [...lowReasons(amounts), ...suspect(rawTotal < SUSPECT_TOTAL.low && 'SiO2' in amounts)];
  return [...ironReason(rawTotal, amounts), ...suspect(rawTotal > SUSPECT_TOTAL.high)];
}

function lowReasons(amounts: Amounts): string[] {
  if (!('SiO2' in amounts)) return ['SiO2 was not measured, so the total says little.'];
  if (!('LOI' in amounts))
    return [
      'Loss on ignition was not measured; water, carbon, elements not sought or a rough surface may be missing.',
    ];
  return ['Elements not sought or a rough surface may be missing.'];
}

function ironReason(rawTotal: number, amounts: Amounts): string[] {
  const iron = amounts.Fe2O3?.value ?? 0;
  const asFeO = rawTotal - iron + convertForm(iron, 'Fe2O3', 'FeO');
  const ceiling = rawTotal > USUAL_TOTAL.high ? USUAL_TOTAL.high : 100;
  if (rawTotal <= ceiling || asFeO > ceiling) return [];
  return [`All iron is stated as Fe2O3; as FeO the total would be ${figureText(asFeO)}.`];
}

const suspect = (is: boolean) =>
  is ? ['So far out that units and column headings should be checked first.'] : [];
