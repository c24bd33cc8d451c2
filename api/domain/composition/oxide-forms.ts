import { usualForm } from '../chemistry/forms.ts';
import { oxideFactor } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';
import { addAmounts, figureText, scaleAmount } from './amount.ts';
import type { Ledger } from './ledger.ts';
import type { Reading } from './mass-fractions.ts';
import type { Amount, NormalisationSettings } from './types.ts';

/** FeO and Fe2O3 whose ratio is that of one iron written twice, to this relative difference, are that iron. */
const SAME_IRON = 0.003;
/** Rounding, relative, from which on such a ratio may be chance. */
const COARSE = 0.01;

/**
 * The form an element takes under the settings; the usual oxide for elements that have no setting. Null for oxygen,
 * carbon, nitrogen, noble gases and noble metals.
 * @example
 * chosenForm('Fe', { iron: 'FeO' }) // 'FeO'
 * chosenForm('Si', {}) // 'SiO2'
 */
export function chosenForm(element: string, settings: NormalisationSettings): string | null {
  const { iron: Fe, manganese: Mn, copper: Cu, lead: Pb, sulfur: S } = settings;
  const chosen: Readonly<Record<string, string>> = { Fe, Mn, Cu, Pb, S };
  return chosen[element] ?? usualForm(element);
}

/**
 * Amounts by chosen form, wt%: each reading times the ratio of oxide factors, several oxides of one element summed
 * (FeO and Fe2O3 into the iron chosen). CO2 stays beside excluded carbon. Readings without a form (oxygen, carbon,
 * coating metals) and LOI are not in the answer. Throws when an element and an oxide of it are both given, or when
 * FeO and Fe2O3 are one iron written twice.
 * @example
 * of = (analyte, element, value) => ({ analyte, element, amount: { value, limit: null, sigma: null, sigmaBasis: null, resolution: null } })
 * settings = { iron: 'Fe2O3' }
 * intoForms([of('FeO', 'Fe', 1), of('Fe2O3', 'Fe', 2)], settings, { steps: [], warnings: [] }).Fe2O3.value // 3.1113
 * intoForms([of('Fe', 'Fe', 1), of('Fe2O3', 'Fe', 2)], settings, { steps: [], warnings: [] }) // throws Fe and Fe2O3
 */
export function intoForms(
  readings: readonly Reading[],
  settings: NormalisationSettings,
  ledger: Ledger,
): Record<string, Amount> {
  const found: Record<string, Amount> = {};
  const sources = new Map<string, Reading[]>();
  for (const reading of readings) {
    const form = formOfReading(reading, settings);
    if (form === null) continue;
    const amount = changeForm(reading, form, ledger);
    const before = sources.get(form) ?? [];
    for (const other of before) refuseTwice(other, reading, ledger);
    sources.set(form, [...before, reading]);
    found[form] = found[form] ? summed(found[form], { amount, form, reading }, ledger) : amount;
  }
  return found;
}

function formOfReading({ analyte, element }: Reading, settings: NormalisationSettings): string | null {
  if (element === null) return null;
  return analyte === 'CO2' ? 'CO2' : chosenForm(element, settings);
}

function changeForm({ analyte, amount }: Reading, form: string, { steps }: Ledger): Amount {
  const factor = oxideFactor(form) / oxideFactor(analyte);
  const changed = analyte === form ? amount : scaleAmount(amount, factor);
  steps.push({
    analyte,
    oxide: form,
    what: analyte === form ? 'as reported' : `${analyte} as ${form}, IUPAC 2021 atomic weights`,
    before: { value: amount.value, unit: 'wt%' },
    factor: analyte === form ? 1 : factor,
    after: changed.value,
  });
  return changed;
}

interface Addition {
  readonly amount: Amount;
  readonly form: string;
  readonly reading: Reading;
}

function summed(sum: Amount, { amount, form, reading }: Addition, { steps, warnings }: Ledger): Amount {
  const total = addAmounts(sum, amount);
  if ((sum.value === null) !== (amount.value === null))
    warnings.push(`${form} is a sum in which one term is below detection; that term counts as nothing.`);
  steps.push({
    analyte: reading.analyte,
    oxide: form,
    what: `added to the other ${form}: ${figureText(sum.value ?? 0)} + ${figureText(amount.value ?? 0)}`,
    before: { value: amount.value, unit: 'wt%' },
    factor: 1,
    after: total.value,
  });
  return total;
}

function refuseTwice(first: Reading, second: Reading, { warnings }: Ledger): void {
  const [a, b] = [first.analyte, second.analyte];
  if (a === first.element || b === second.element)
    throw new RequirementError(
      `an element is given once, as itself or as its oxide; found both ${a} and ${b}`,
    );
  const [x, y] = [first.amount.value, second.amount.value];
  if (first.element !== 'Fe' || x === null || y === null) return;
  const same = Math.abs((x * oxideFactor(b)) / (y * oxideFactor(a)) - 1);
  const rounding = (first.amount.resolution ?? 0) / (2 * x) + (second.amount.resolution ?? 0) / (2 * y);
  const given = `${a} ${figureText(x)} and ${b} ${figureText(y)}`;
  if (same < SAME_IRON && rounding < COARSE)
    throw new RequirementError(
      `FeO and Fe2O3 given together are two parts of the iron; ${given} are one iron written twice`,
    );
  if (same < SAME_IRON + rounding)
    warnings.push(`${given} may be one iron written twice; they are added here. Leave one out if so.`);
}
