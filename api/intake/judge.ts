import { TOTAL } from '../domain/chemistry/analytes.ts';
import { elementOf } from '../domain/chemistry/oxides.ts';
import { totalDisagreement } from '../domain/composition/faults.ts';
import { massFractions } from '../domain/composition/mass-fractions.ts';
import { normaliseAnalysis } from '../domain/composition/normalise.ts';
import { chosenForm } from '../domain/composition/oxide-forms.ts';
import { SUSPECT_TOTAL } from '../domain/composition/total.ts';
import {
  DEFAULT_NORMALISATION,
  type NormalisedAnalysis,
  type ReportedValue,
} from '../domain/composition/types.ts';
import { RequirementError } from '../domain/requirement.ts';
import type { ProblemLog } from './problems.ts';

/** Atom % sums to 100 by definition; further off, columns are missing or doubled. Our own choice. */
const ATOMS = { low: 95, high: 105 };

/** Judges an analysis as a whole, as normalisation will see it; false where it must not be stored. */
export function judge(values: readonly ReportedValue[], row: number, log: ProblemLog): boolean {
  const substances = values.filter((v) => v.analyte !== TOTAL);
  if (substances.length === 0) {
    log.warn('no-figures', 'an analysis needs at least one value; this row has none and is left out', {
      row,
    });
    return false;
  }
  if (!substances.some((v) => v.value !== null && v.value > 0)) {
    log.warn('nothing-found', 'a comparison needs a value above detection; this analysis has none', { row });
    return true;
  }
  const twice = givenTwice(substances);
  if (twice !== null) log.error('twice', twice, { row });
  const normalised = twice === null ? normalise(values, row, log) : null;
  if (normalised === null) return false;
  const before = log.errors;
  if (values.some((v) => v.unit === 'at%')) judgeAtoms(substances, row, log);
  else judgeTotal(values, normalised, { row, log });
  return log.errors === before;
}

function normalise(
  values: readonly ReportedValue[],
  row: number,
  log: ProblemLog,
): NormalisedAnalysis | null {
  try {
    return normaliseAnalysis(values, DEFAULT_NORMALISATION);
  } catch (error) {
    if (!(error instanceof RequirementError)) throw error;
    log.error('unusable', error.message, { row });
    return null;
  }
}

/** An element and its oxide, or the element twice, would be counted twice. FeO beside Fe2O3 are two parts of iron. */
function givenTwice(values: readonly ReportedValue[]): string | null {
  const seen = new Map<string, string>();
  for (const { analyte } of values) {
    const element = elementOf(analyte);
    if (element === null) continue;
    const other = seen.get(element);
    if (other !== undefined && (other === element || analyte === element || other === analyte))
      return `an element may be given once, as itself or as its oxide; ${other} and ${analyte} are both given: leave one column out`;
    seen.set(element, analyte);
  }
  return null;
}

function judgeAtoms(values: readonly ReportedValue[], row: number, log: ProblemLog): void {
  const sum = values.reduce((total, v) => total + (v.value ?? 0), 0);
  if (sum > ATOMS.high) log.error('total', `atom % sums to 100; this row sums to ${sum.toFixed(1)}`, { row });
  else if (sum < ATOMS.low)
    log.warn('total', `atom % sums to 100; this row sums to ${sum.toFixed(1)}`, { row });
}

function judgeTotal(
  values: readonly ReportedValue[],
  { total, rawTotal }: NormalisedAnalysis,
  { row, log }: { row: number; log: ProblemLog },
): void {
  if (rawTotal > SUSPECT_TOTAL.high)
    log.error(
      'total',
      `an analysis may sum to ${SUSPECT_TOTAL.high} wt% at most (98–102 is usual); this one sums to ${rawTotal.toFixed(1)}: ` +
        'is a unit wrong, or an element counted twice?',
      { row },
    );
  else if (total.judgement === 'low' || total.judgement === 'high')
    log.warn(`total-${total.judgement}`, total.message, { row });
  if (!values.some((v) => v.analyte === TOTAL)) return;
  const readings = massFractions(values, (element) => chosenForm(element, DEFAULT_NORMALISATION), {
    steps: [],
    warnings: [],
  });
  const disagreement = totalDisagreement(readings, rawTotal);
  if (disagreement !== null) log.warn('total-disagrees', disagreement, { row });
}
