import { TOTAL } from '../chemistry/analytes.ts';
import { elementOf } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';
import type { Ledger } from './ledger.ts';
import type { ReportedValue } from './types.ts';

/** Analytes leaving on heating; kept out of a volatile-free composition. */
export const VOLATILES: readonly string[] = ['LOI', 'H2O', 'CO2'];

/**
 * Reported values fit to reckon with: each analyte known and given once, figures finite and not negative (but for a
 * gain on ignition), atom % for elements only and not mixed with mass units. A figure of exactly 0 becomes below
 * detection, at the stated limit or else at one step of its last decimal. Throws where that cannot be had; what was
 * changed goes into the ledger's warnings.
 * @example
 * of = (analyte, value) => ({ analyte, value, unit: 'wt%', uncertainty: null, basis: null, belowDetection: false, limit: null, resolution: 0.01 })
 * checkedReport([of('PbO', 0)], { steps: [], warnings: [] })[0] // { value: null, belowDetection: true, limit: 0.01 }
 * checkedReport([of('PbO', 1), of('PbO', 2)], { steps: [], warnings: [] }) // throws once; PbO is given twice
 */
export function checkedReport(values: readonly ReportedValue[], ledger: Ledger): ReportedValue[] {
  const seen = new Set<string>();
  for (const value of values) {
    checkName(value);
    checkFigures(value);
    if (seen.has(value.analyte))
      throw new RequirementError(`an analysis gives each analyte once; ${value.analyte} is given twice`);
    seen.add(value.analyte);
  }
  checkUnits(values.filter(({ analyte }) => analyte !== TOTAL));
  return values.map((value) => zeroAsUndetected(value, ledger));
}

function checkName({ analyte }: ReportedValue): void {
  if (analyte !== 'LOI' && analyte !== TOTAL && elementOf(analyte) === null)
    throw new RequirementError(`an analyte needs to be an element, an oxide, LOI or Total; found ${analyte}`);
}

function checkFigures({ analyte, value, belowDetection, limit, uncertainty }: ReportedValue): void {
  if (belowDetection ? value !== null : value === null)
    throw new RequirementError(
      `a reported value is either a figure or below detection; ${analyte} is ${belowDetection ? 'both' : 'neither'}`,
    );
  if (value !== null && !Number.isFinite(value))
    throw new RequirementError(`an amount needs to be a number; ${analyte} is ${value}`);
  if (value !== null && value < 0 && analyte !== 'LOI')
    throw new RequirementError(`an amount needs to be zero or more; ${analyte} is ${value}`);
  if (limit !== null && !(limit > 0 && limit < Infinity))
    throw new RequirementError(`a detection limit needs to be above zero; that of ${analyte} is ${limit}`);
  if (uncertainty !== null && !(uncertainty >= 0 && uncertainty < Infinity))
    throw new RequirementError(
      `an uncertainty needs to be zero or more; that of ${analyte} is ${uncertainty}`,
    );
}

function checkUnits(values: readonly ReportedValue[]): void {
  const atoms = values.filter(({ unit }) => unit === 'at%');
  if (atoms.length === 0) return;
  const mass = values.find(({ unit }) => unit !== 'at%');
  if (mass)
    throw new RequirementError(
      `an analysis needs one scale; ${atoms[0]!.analyte} is in atom % and ${mass.analyte} in ${mass.unit}`,
    );
  const oxide = atoms.find(({ analyte }) => elementOf(analyte) !== analyte);
  if (oxide) throw new RequirementError(`atom % counts elements; ${oxide.analyte} is none: is mole % meant?`);
}

function zeroAsUndetected(value: ReportedValue, { warnings }: Ledger): ReportedValue {
  if (value.value !== 0 || value.analyte === TOTAL || value.analyte === 'LOI') return value;
  const decimal =
    value.resolution !== null && (value.resolution < 1 || value.unit === 'ppm' || value.unit === 'ppb');
  const limit = value.limit ?? (decimal ? value.resolution : null);
  const known = limit === null ? 'with no known limit' : `at ${limit} ${value.unit}`;
  warnings.push(`${value.analyte} is reported as 0; taken as below detection ${known}.`);
  return { ...value, value: null, belowDetection: true, limit, uncertainty: null };
}
