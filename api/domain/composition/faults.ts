import { TOTAL } from '../chemistry/analytes.ts';
import { oxideFactor } from '../chemistry/oxides.ts';
import { figureText } from './amount.ts';
import type { Reading } from './mass-fractions.ts';
import { VOLATILES } from './reported.ts';
import { USUAL_TOTAL } from './total.ts';
import type { ReportedValue } from './types.ts';

/** An uncertainty above this share of a major value is more often a slip of entry than a poor measurement. */
export const LOOSE_UNCERTAINTY = 0.3;
/** Such uncertainties are expected near the detection limit and in traces: our own choice of where that ends. */
const LIMITS_AWAY = 10;
const TRACE_WT = 0.1;
/** Room for rounding between a laboratory's total and the sum of its values, wt%: our own choice. */
const TOTAL_ROOM = 0.5;

const WT_PER: Readonly<Record<string, number>> = { 'wt%': 1, ppm: 1e-4, ppb: 1e-7, 'at%': 1 };

/**
 * Sentences about uncertainties worth a second look: above 30 % of a value well over its detection limit (a value
 * times a percentage entered as ±, as seen in published data), and those whose meaning (1σ, 2σ) is not stated.
 * @example
 * of = (value, uncertainty) => ({ analyte: 'Al', value, unit: 'wt%', uncertainty, basis: '1σ', belowDetection: false, limit: null, resolution: 0.01 })
 * uncertaintyFaults([of(11, 3.74)]).length // 1
 * uncertaintyFaults([of(11, 0.34)]).length // 0
 */
export function uncertaintyFaults(values: readonly ReportedValue[]): string[] {
  const loose = values
    .filter(isLoose)
    .map(
      ({ analyte, value, uncertainty }) => `${analyte} ${figureText(value!)} ± ${figureText(uncertainty!)}`,
    );
  const unstated = values
    .filter((v) => v.uncertainty !== null && (v.basis === null || v.basis === 'unstated'))
    .map(({ analyte }) => analyte);
  return [
    ...(loose.length === 0
      ? []
      : [
          `An uncertainty above 30 % of a major value is often a percentage multiplied in by mistake: ${loose.join(', ')}.`,
        ]),
    ...(unstated.length === 0
      ? []
      : [`What ± means is not stated for ${unstated.join(', ')}; taken as one standard deviation.`]),
  ];
}

function isLoose({ value, uncertainty, limit, unit }: ReportedValue): boolean {
  if (value === null || uncertainty === null || !(uncertainty > LOOSE_UNCERTAINTY * Math.abs(value)))
    return false;
  return limit === null ? value * WT_PER[unit]! >= TRACE_WT : value >= LIMITS_AWAY * limit;
}

/**
 * What may explain an unusual raw total (wt%), as sentences: the two-cation factor forgotten in oxides such as
 * Al2O3, elements under oxide headings, oxides under element headings, or oxides on the ignited basis. One oxide that is exactly half of what it
 * should be cannot be seen alone; only the total can show that several are.
 * @example
 * of = (analyte, element, value) => ({ analyte, element, amount: { value, limit: null, sigma: null, sigmaBasis: null, resolution: null } })
 * totalHints([of('SiO2', 'Si', 60), of('Al2O3', 'Al', 20)], 80).length // 1
 * totalHints([of('SiO2', 'Si', 80), of('Al2O3', 'Al', 20)], 100).length // 0
 */
export function totalHints(readings: readonly Reading[], rawTotal: number): string[] {
  const measured = readings.filter(
    ({ analyte, element }) => element !== null && element !== 'O' && !VOLATILES.includes(analyte),
  );
  const oxides = measured.filter(({ analyte, element }) => analyte !== element);
  const hints: string[] = [];
  const halved = twoCations(oxides);
  if (rawTotal < USUAL_TOTAL.low && isUsual(rawTotal + halved.sum) && halved.sum > 0)
    hints.push(
      `If ${halved.names} were halved by a forgotten two-cation factor, the total would be ${figureText(rawTotal + halved.sum)}.`,
    );
  const asElements = rawTotal + sum(oxides, (r) => value(r) * (oxideFactor(r.analyte) - 1));
  if (rawTotal < USUAL_TOTAL.low && isUsual(asElements))
    hints.push(
      `Read as elements, the figures would make ${figureText(asElements)} wt% of oxides: are the headings right?`,
    );
  const plain = sum(measured, value);
  const volatile = volatilesCounted(readings);
  const raisedByElements = rawTotal - volatile - plain > TOTAL_ROOM;
  if (rawTotal > USUAL_TOTAL.high && volatile > 0 && isUsual(rawTotal - volatile))
    hints.push(
      `Without what leaves on ignition the oxides sum to ${figureText(rawTotal - volatile)}: they may be on the ignited basis, with the loss measured beside them.`,
    );
  if (rawTotal > USUAL_TOTAL.high && raisedByElements && isUsual(plain))
    hints.push(
      `The figures themselves sum to ${figureText(plain)}: oxides under element headings, or elements normalised without oxygen.`,
    );
  return hints;
}

/**
 * Compares the laboratory's own total (wt%) with the sum of its values, as reported and as oxides; null when they
 * agree within 0.5 wt% or no total is given.
 * @example
 * of = (analyte, element, value) => ({ analyte, element, amount: { value, limit: null, sigma: null, sigmaBasis: null, resolution: null } })
 * totalDisagreement([of('SiO2', 'Si', 60), of('Total', null, 60.1)], 60) // null
 */
export function totalDisagreement(readings: readonly Reading[], rawTotal: number): string | null {
  const printed = readings.find(({ analyte }) => analyte === TOTAL)?.amount.value ?? null;
  if (printed === null) return null;
  const rest = readings.filter(({ analyte }) => analyte !== TOTAL);
  const agrees = (total: number) => Math.abs(total - printed) <= TOTAL_ROOM;
  if (agrees(rawTotal) || agrees(sum(rest, value))) return null;
  const halved = twoCations(rest);
  const why = agrees(rawTotal + halved.sum)
    ? `${halved.names} doubled would restore it: a forgotten two-cation factor?`
    : 'a digit, a heading or an analyte may be wrong or missing.';
  return `The laboratory's total is ${figureText(printed)}, the values here sum to ${figureText(rawTotal)}: ${why}`;
}

const value = ({ amount }: Reading) => amount.value ?? 0;
const sum = (readings: readonly Reading[], of: (reading: Reading) => number) =>
  readings.reduce((total, reading) => total + of(reading), 0);
const isUsual = (total: number) => total >= USUAL_TOTAL.low && total <= USUAL_TOTAL.high;

/** H2O and CO2 are part of LOI where it is given. */
function volatilesCounted(readings: readonly Reading[]): number {
  const volatiles = readings.filter(({ analyte }) => VOLATILES.includes(analyte));
  const loss = volatiles.filter(({ analyte }) => analyte === 'LOI');
  return Math.max(0, sum(loss.length > 0 ? loss : volatiles, value));
}

function twoCations(readings: readonly Reading[]) {
  const found = readings.filter(({ analyte, element }) => analyte.startsWith(`${element}2O`));
  return { sum: sum(found, value), names: found.map(({ analyte }) => analyte).join(', ') };
}
