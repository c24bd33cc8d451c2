import { TOTAL } from '../chemistry/analytes.ts';
import { atomicWeight } from '../chemistry/atomic-weights.ts';
import { elementOf, oxideFactor } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';
import { figureText, oneSigma, scaleAmount } from './amount.ts';
import type { Ledger } from './ledger.ts';
import type { Amount, ReportedValue, Unit } from './types.ts';

/** An amount in wt% of the analyte as it was reported. */
export interface Reading {
  readonly analyte: string;
  /** Null for LOI and Total. */
  readonly element: string | null;
  readonly amount: Amount;
}

const TO_WT: Readonly<Record<Exclude<Unit, 'at%'>, number>> = { 'wt%': 1, ppm: 1e-4, ppb: 1e-7 };

/**
 * Reported values in wt% of what was reported. Atom % has no mass scale of its own: atoms × atomic weight, scaled so
 * that the oxides in `formOf` sum to 100. Uncertainties become one standard deviation. Takes values that
 * `checkedReport` has passed; throws when atom % holds nothing above detection.
 * @example
 * of = (analyte, value, unit) => ({ analyte, value, unit, uncertainty: 20, basis: '2σ', belowDetection: false, limit: null, resolution: 1 })
 * massFractions([of('Pb', 300, 'ppm')], () => null, { steps: [], warnings: [] })[0].amount // { value: 0.03, sigma: 0.001, resolution: 0.0001 }
 */
export function massFractions(
  values: readonly ReportedValue[],
  formOf: (element: string) => string | null,
  ledger: Ledger,
): Reading[] {
  const perAtom = values.some(({ unit }) => unit === 'at%') ? massOfOneAtomPercent(values, formOf) : 0;
  return values
    .filter(({ analyte, unit }) => !(analyte === TOTAL && unit === 'at%'))
    .map((value) => {
      const element = elementOf(value.analyte);
      const factor = value.unit === 'at%' ? perAtom * atomicWeight(element!) : TO_WT[value.unit];
      const amount = scaleAmount(amountOf(value), factor);
      if (value.unit !== 'wt%' && value.analyte !== TOTAL) ledger.steps.push(unitStep(value, factor, amount));
      return { analyte: value.analyte, element, amount };
    });
}

/** wt% per atom % and unit of atomic weight. */
function massOfOneAtomPercent(
  values: readonly ReportedValue[],
  formOf: (element: string) => string | null,
): number {
  const oxides = values.reduce((sum, { analyte, value }) => {
    const form = analyte === TOTAL ? null : formOf(analyte);
    return form === null ? sum : sum + (value ?? 0) * atomicWeight(analyte) * oxideFactor(form);
  }, 0);
  if (!(oxides > 0)) throw new RequirementError('atom % needs an element above detection; there is none');
  return 100 / oxides;
}

function amountOf({ value, limit, uncertainty, basis, resolution }: ReportedValue): Amount {
  const sigma = value === null || uncertainty === null ? null : oneSigma(uncertainty, basis);
  return { value, limit, sigma, sigmaBasis: sigma === null ? null : 'stated', resolution };
}

function unitStep({ analyte, value, unit }: ReportedValue, factor: number, amount: Amount) {
  const atoms = `atoms to mass: ${analyte} ${figureText(atomicWeight(elementOf(analyte) ?? 'O'))}, oxides scaled to 100`;
  return {
    analyte,
    oxide: analyte,
    what: unit === 'at%' ? atoms : `${unit} to wt%`,
    before: { value, unit },
    factor,
    after: amount.value,
  };
}
