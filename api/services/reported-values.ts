import type { NewReportedValue } from '../contract/analysis.ts';
import type { Fault } from '../contract/problem.ts';
import { canonicalAnalyte } from '../domain/chemistry/analytes.ts';
import { elementOf } from '../domain/chemistry/oxides.ts';
import { normaliseAnalysis } from '../domain/composition/normalise.ts';
import { DEFAULT_NORMALISATION, type ReportedValue } from '../domain/composition/types.ts';
import { attempt, Failure } from './failure.ts';

/** Figures typed in by hand or sent by a program, with each analyte in its one spelling; faults name the place. */
export function checkedValues(values: readonly NewReportedValue[]): ReportedValue[] {
  const faults: Fault[] = [];
  const seen = new Map<string, number>();
  const checked = values.map((value, index) => {
    const analyte = canonicalAnalyte(value.analyte);
    for (const message of faultsOf(value, analyte, seen)) faults.push({ at: `reported.${index}`, message });
    if (analyte !== null) seen.set(analyte, index);
    return { ...value, analyte: analyte ?? value.analyte };
  });
  if (faults.length > 0) throw new Failure('invalid', faults[0]!.message, faults);
  refuseContradictions(checked);
  return checked;
}

/** What only shows in the figures together: an element given twice in different forms, scales mixed. */
function refuseContradictions(values: readonly ReportedValue[]): void {
  if (!values.some(({ analyte, value }) => value !== null && value > 0 && elementOf(analyte) !== null))
    return;
  const normalised = attempt(() => normaliseAnalysis(values, DEFAULT_NORMALISATION));
  if ('value' in normalised) return;
  throw new Failure('invalid', normalised.reason, [{ at: 'reported', message: normalised.reason }]);
}

function faultsOf(value: NewReportedValue, analyte: string | null, seen: Map<string, number>): string[] {
  const name = analyte ?? value.analyte;
  const faults: string[] = [];
  if (analyte === null)
    faults.push(`an analyte is an element, an oxide, LOI or Total; “${value.analyte}” is none of them.`);
  else if (seen.has(analyte))
    faults.push(`an analyte is reported once an analysis; ${analyte} is there twice.`);
  if (value.belowDetection && value.value !== null)
    faults.push(`a value below detection has no figure of its own; ${name} has ${value.value}.`);
  if (!value.belowDetection && value.value === null)
    faults.push(`a value needs a figure, or the mark “below detection”; ${name} has neither.`);
  if (value.value !== null && value.value < 0 && analyte !== 'LOI')
    faults.push(`an amount cannot be negative; ${name} is ${value.value}.`);
  return faults;
}
