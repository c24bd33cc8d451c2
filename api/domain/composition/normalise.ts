import { byDisplayOrder } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';
import { assumedSigma, figureText, scaleAmount } from './amount.ts';
import { totalDisagreement, totalHints, uncertaintyFaults } from './faults.ts';
import type { Ledger } from './ledger.ts';
import { leftOut } from './left-out.ts';
import { massFractions, type Reading } from './mass-fractions.ts';
import { chosenForm, intoForms } from './oxide-forms.ts';
import { checkedReport, VOLATILES } from './reported.ts';
import { describeTotal } from './total.ts';
import type { Amount, Amounts, NormalisationSettings, NormalisedAnalysis, ReportedValue } from './types.ts';

export interface NormalisationOptions {
  /** Relative error of the technique (0.03 for 3 %), assumed where no uncertainty is stated; none by default. */
  readonly relativeError?: number | null;
}

/**
 * An analysis as reported → amounts in the chosen oxides (wt%), the raw total and its judgement, and the same amounts
 * closed to 100, with every step between. Volatile-free: 100·oxide/(total − LOI), with LOI, H2O and CO2 out. Where
 * LOI is given, H2O and CO2 are taken to be inside it. σ, limits and resolution are scaled along; ratios, which
 * comparisons use, do not feel the closure. Throws as `checkedReport` and `intoForms` do, and when nothing is above
 * detection. Atomic weights: IUPAC 2021, doi 10.1515/pac-2019-0603.
 * @example
 * of = (analyte, value) => ({ analyte, value, unit: 'wt%', uncertainty: null, basis: null, belowDetection: false, limit: null, resolution: 0.01 })
 * settings = { iron: 'Fe2O3', volatileFree: true }
 * normalised = normaliseAnalysis([of('SiO2', 72), of('FeO', 18), of('LOI', 8)], settings)
 * normalised.rawTotal // 100.004
 * normalised.closed.SiO2.value // 78.2565
 * normaliseAnalysis([], settings) // throws above detection
 */
export function normaliseAnalysis(
  values: readonly ReportedValue[],
  settings: NormalisationSettings,
  { relativeError = null }: NormalisationOptions = {},
): NormalisedAnalysis {
  const ledger: Ledger = { steps: [], warnings: uncertaintyFaults(values) };
  const report = checkedReport(values, ledger);
  const readings = massFractions(report, (element) => chosenForm(element, settings), ledger);
  ledger.warnings.push(...leftOut(readings, settings));
  const amounts = withAssumedSigma(ordered(allAmounts(readings, settings, ledger)), relativeError, ledger);
  const rawTotal = totalOf(counted(amounts, ledger));
  const relative = values.some(({ unit }) => unit === 'at%');
  const total = describeTotal(rawTotal, { amounts, relative, hints: totalHints(readings, rawTotal) });
  const disagreement = relative ? null : totalDisagreement(readings, rawTotal);
  ledger.warnings.push(...(disagreement === null ? [] : [disagreement]));
  if (total.judgement !== 'usual') ledger.warnings.push(total.message);
  const closed = closeAmounts(amounts, settings, ledger);
  return { amounts, closed, rawTotal, total, ...ledger };
}

function allAmounts(
  readings: readonly Reading[],
  settings: NormalisationSettings,
  ledger: Ledger,
): Record<string, Amount> {
  const forms = intoForms(readings, settings, ledger);
  const loss = readings.find(({ analyte }) => analyte === 'LOI');
  if (!loss) return forms;
  if ((loss.amount.value ?? 0) < 0)
    ledger.warnings.push(
      `LOI is ${figureText(loss.amount.value!)} wt%: a gain on ignition, as iron or lead may bring.`,
    );
  return { ...forms, LOI: loss.amount };
}

function ordered(amounts: Readonly<Record<string, Amount>>): Record<string, Amount> {
  return Object.fromEntries(Object.entries(amounts).sort(([a], [b]) => byDisplayOrder(a, b)));
}

function withAssumedSigma(amounts: Amounts, relativeError: number | null, { warnings }: Ledger): Amounts {
  if (relativeError === null) return amounts;
  const assumed = Object.entries(amounts).filter(([, { value, sigma }]) => value !== null && sigma === null);
  if (assumed.length === 0) return amounts;
  warnings.push(
    `No uncertainty is stated for ${assumed.map(([oxide]) => oxide).join(', ')}; ${figureText(100 * relativeError)} % is assumed (common practice, no published source).`,
  );
  const filled = assumed.map(([oxide, amount]): [string, Amount] => [
    oxide,
    {
      ...amount,
      sigma: assumedSigma(Math.abs(amount.value!), relativeError, amount.limit),
      sigmaBasis: 'assumed',
    },
  ]);
  return { ...amounts, ...Object.fromEntries(filled) };
}

/** What makes up the total: H2O and CO2 are not counted beside the LOI that holds them. */
function counted(amounts: Amounts, { warnings }: Ledger): Amounts {
  const inside = ['H2O', 'CO2'].filter((volatile) => volatile in amounts);
  if (!('LOI' in amounts) || inside.length === 0) return amounts;
  warnings.push(`${inside.join(' and ')} taken as part of LOI and not counted beside it.`);
  return Object.fromEntries(Object.entries(amounts).filter(([oxide]) => !inside.includes(oxide)));
}

function totalOf(amounts: Amounts): number {
  return Object.values(amounts).reduce((sum, { value }) => sum + (value ?? 0), 0);
}

function closeAmounts(amounts: Amounts, { volatileFree }: NormalisationSettings, ledger: Ledger): Amounts {
  const kept = volatileFree
    ? Object.fromEntries(Object.entries(amounts).filter(([oxide]) => !VOLATILES.includes(oxide)))
    : positive(counted(amounts, { steps: [], warnings: [] }));
  const basis = totalOf(kept);
  if (!(basis > 0)) throw new RequirementError('closure needs an oxide above detection; there is none');
  const what = `${volatileFree ? 'volatile-free, ' : ''}closed to 100: 100 / ${figureText(basis)}`;
  return Object.fromEntries(
    Object.entries(kept).map(([oxide, amount]) => {
      const closed = scaleAmount(amount, 100 / basis);
      const before = { value: amount.value, unit: 'wt%' } as const;
      ledger.steps.push({ analyte: oxide, oxide, what, before, factor: 100 / basis, after: closed.value });
      return [oxide, closed];
    }),
  );
}

/** A gain on ignition is no part of a composition. */
function positive(amounts: Amounts): Amounts {
  return Object.fromEntries(Object.entries(amounts).filter(([, { value }]) => value === null || value >= 0));
}
