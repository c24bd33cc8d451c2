import type { NewReportedValue } from '../../../api/contract/analysis.ts';
import type { ReportedValue, UncertaintyBasis, Unit } from '../../../api/domain/composition/types.ts';
import { readNumber, resolutionOf } from '../../parts/numbers.ts';

/** One line of the form, as typed. */
export interface ValueRow {
  readonly key: number;
  readonly analyte: string;
  readonly value: string;
  readonly unit: Unit;
  readonly uncertainty: string;
  readonly basis: UncertaintyBasis;
  readonly below: boolean;
  readonly limit: string;
}

export function blankRow(key: number, like?: ValueRow): ValueRow {
  const { unit, basis } = like ?? { unit: 'wt%', basis: 'unstated' };
  return { key, analyte: '', value: '', unit, uncertainty: '', basis, below: false, limit: '' };
}

/** A stored figure as text, with the digits it was reported in. */
function typed(value: number | null, resolution: number | null = null): string {
  if (value === null) return '';
  if (resolution === null) return String(value);
  const decimals = Math.max(0, Math.round(-Math.log10(resolution)));
  return value.toFixed(Math.min(decimals, 12));
}

export function rowsOf(reported: readonly ReportedValue[]): ValueRow[] {
  return reported.map((one, key) => ({
    key,
    analyte: one.analyte,
    value: typed(one.value, one.resolution),
    unit: one.unit,
    uncertainty: typed(one.uncertainty),
    basis: one.basis ?? 'unstated',
    below: one.belowDetection,
    limit: typed(one.limit),
  }));
}

export const isBlank = (row: ValueRow) => !row.analyte.trim() && !row.value.trim() && !row.below;

export interface ReadRows {
  readonly reported: NewReportedValue[];
  /** What is wrong, by the key of its row. */
  readonly wrong: ReadonlyMap<number, string>;
}

/** Reads every line that is not blank; lines with something wrong are named, not guessed at. */
export function readRows(rows: readonly ValueRow[]): ReadRows {
  const wrong = new Map<number, string>();
  const seen = new Set<string>();
  const reported: NewReportedValue[] = [];
  for (const row of rows.filter((one) => !isBlank(one))) {
    const read = readRow(row);
    const twice = seen.has(row.analyte.trim());
    seen.add(row.analyte.trim());
    if (typeof read === 'string') wrong.set(row.key, read);
    else if (twice) wrong.set(row.key, `${read.analyte} must occur once; it is given twice.`);
    else reported.push(read);
  }
  return { reported, wrong };
}

function readRow(row: ValueRow): NewReportedValue | string {
  const analyte = row.analyte.trim();
  if (!analyte) return 'Name the analyte, as in SiO2 or Pb.';
  const less = /^[<≤]\s*(.+)$/.exec(row.value.trim());
  const below = row.below || less !== null;
  const value = below ? null : readNumber(row.value);
  if (row.below && !less && row.value.trim())
    return `${analyte} is below detection, so it has no value: clear it, or write it as the limit.`;
  if (!below && value === null) return `${analyte} needs a number; “${row.value.trim()}” is none.`;
  if (value !== null && value < 0) return `${analyte} must not be negative; it is ${row.value.trim()}.`;
  const limitText = less?.[1] ?? row.limit;
  const limit = optional(limitText);
  const uncertainty = below ? null : optional(row.uncertainty);
  if (limit === undefined) return `The detection limit of ${analyte} needs a number of 0 or more.`;
  if (uncertainty === undefined) return `The ± of ${analyte} needs a number of 0 or more.`;
  return {
    analyte,
    value,
    unit: row.unit,
    uncertainty,
    basis: uncertainty === null ? null : row.basis,
    belowDetection: below,
    limit,
    resolution: below ? null : resolutionOf(row.value),
  };
}

/** A figure that may be left out: null when empty, undefined when it is no number. */
function optional(text: string): number | null | undefined {
  if (!text.trim()) return null;
  const value = readNumber(text);
  return value === null || value < 0 ? undefined : value;
}

/** Lines copied from a spreadsheet: analyte, value, ± each; or a row of names over a row of values. */
export function pastedRows(text: string, like: ValueRow, firstKey: number): ValueRow[] {
  const lines = text
    .split(/\r?\n/)
    .filter((line) => line.trim())
    .map((line) => line.split(/\t|;/).map((cell) => cell.trim()));
  const [names, values] = lines;
  const flat = lines.length === 2 && (names?.length ?? 0) > 2 && readNumber(names?.[1] ?? '') === null;
  const entries = flat && names && values ? names.map((name, i) => [name, values[i] ?? '']) : lines;
  return entries.map(([analyte = '', value = '', uncertainty = ''], i) => ({
    ...blankRow(firstKey + i, like),
    analyte,
    value,
    uncertainty,
  }));
}
