import type { NewMaterial, StoredMaterial } from '../../../../api/contract/material.ts';
import type { Hazard, Material } from '../../../../api/domain/batch/types.ts';
import { canonicalAnalyte } from '../../../../api/domain/chemistry/analytes.ts';
import { readNumber } from '../../../parts/numbers.ts';

/** A material as typed. */
export interface MaterialForm {
  readonly name: string;
  readonly kind: 'formula' | 'analysis';
  readonly formula: string;
  /** Percent pure, least and most. */
  readonly low: string;
  readonly high: string;
  readonly gangue: string;
  /** One analyte a line: name, wt%, and ± if known. */
  readonly values: string;
  readonly specimen: string | null;
  readonly source: string;
  readonly handling: string;
  readonly hazards: readonly Hazard[];
  readonly price: string;
  readonly onHand: string;
}

export const BLANK_MATERIAL: MaterialForm = {
  ...{ name: '', kind: 'formula', formula: '', low: '100', high: '', gangue: '', values: '' },
  ...{ specimen: null, source: '', handling: '', hazards: [], price: '', onHand: '' },
};

const text = (x: number | null) => (x === null ? '' : String(x));

export function formOfMaterial(stored: StoredMaterial): MaterialForm {
  const { name, making, source, handling, hazards, pricePerKg, onHand } = stored;
  const kept = { name, source, handling, hazards, price: text(pricePerKg), onHand: text(onHand) };
  if (making.kind === 'analysis')
    return {
      ...BLANK_MATERIAL,
      ...kept,
      kind: 'analysis',
      values: textOfAnalysis(making.values, making.sigma, making.lossOnIgnition),
      specimen: making.specimen,
    };
  const percent = (share: number) => String(Number((100 * share).toPrecision(6)));
  const { formula, purity, gangue } = making;
  const high = purity.high === purity.low ? '' : percent(purity.high);
  return { ...BLANK_MATERIAL, ...kept, formula, low: percent(purity.low), high, gangue: gangue ?? '' };
}

/** A starter material as the beginning of an own one. */
export function formOfStarter({ name, origin, handling, source }: Material): MaterialForm {
  const formula = origin.kind === 'formula' ? origin.formula : '';
  return { ...BLANK_MATERIAL, name: `${name}, own`, formula, handling, source };
}

export function textOfAnalysis(
  values: Readonly<Record<string, number>>,
  sigma: Readonly<Record<string, number>>,
  lossOnIgnition: number | null,
): string {
  const lines = Object.entries(values).map(([name, wt]) =>
    [name, round(wt), ...(sigma[name] ? [round(sigma[name])] : [])].join('  '),
  );
  return [...lines, ...(lossOnIgnition === null ? [] : [`LOI  ${lossOnIgnition}`])].join('\n');
}

const round = (x: number) => Number(x.toPrecision(5));

export interface ReadAnalysis {
  readonly values: Record<string, number>;
  readonly sigma: Record<string, number>;
  readonly lossOnIgnition: number | null;
}

/** Reads lines such as `SiO2 60.2 ± 0.4`; the first that cannot be read is the answer. */
export function readAnalysis(lines: string): ReadAnalysis | string {
  const read: ReadAnalysis = { values: {}, sigma: {}, lossOnIgnition: null };
  let loss: number | null = null;
  for (const line of lines.split('\n').map((one) => one.trim())) {
    if (!line) continue;
    const [written = '', amount = '', uncertainty] = line.split(/[\s;:=±]+/).filter((cell) => cell !== '+/-');
    const analyte = canonicalAnalyte(written);
    const value = readNumber(amount);
    if (analyte === null) return `“${written}” is no oxide or element.`;
    if (value === null || value < 0) return `${analyte} needs a number of zero or more; found “${amount}”.`;
    if (analyte === 'Total') continue;
    if (analyte === 'LOI' ? loss !== null : analyte in read.values) return `${analyte} stands on two lines.`;
    if (analyte === 'LOI') loss = value;
    else read.values[analyte] = value;
    const sigma = uncertainty === undefined ? null : readNumber(uncertainty);
    if (uncertainty !== undefined && (sigma === null || sigma < 0))
      return `The ± of ${analyte} needs a number of zero or more; found “${uncertainty}”.`;
    if (sigma !== null && analyte !== 'LOI') read.sigma[analyte] = sigma;
  }
  if (Object.keys(read.values).length === 0) return 'An analysis needs at least one line, such as SiO2 60.2.';
  return { ...read, lossOnIgnition: loss };
}

/** The material as it would be kept, or what is wrong with it. */
export function readMaterial(form: MaterialForm): NewMaterial | string {
  const [price, onHand] = [optional(form.price), optional(form.onHand)];
  if (price === undefined) return 'The price needs a number of zero or more.';
  if (onHand === undefined) return 'The amount on hand needs a number of zero or more.';
  const making = form.kind === 'formula' ? readFormula(form) : readMakingByAnalysis(form);
  if (typeof making === 'string') return making;
  const { source, handling, hazards } = form;
  return {
    ...{ name: form.name.trim(), making, source, handling, hazards: [...hazards] },
    ...{ pricePerKg: price, onHand },
  };
}

function readMakingByAnalysis(form: MaterialForm): NewMaterial['making'] | string {
  const read = readAnalysis(form.values);
  return typeof read === 'string' ? read : { kind: 'analysis', ...read, specimen: form.specimen };
}

function readFormula({ formula, low, high, gangue }: MaterialForm): NewMaterial['making'] | string {
  const least = readNumber(low || '100');
  const most = high.trim() ? readNumber(high) : least;
  if (!formula.trim()) return 'A formula is needed, such as PbCO3.';
  if (least === null || most === null || !(least > 0 && least <= most && most <= 100))
    return 'Purity needs percentages above 0 and up to 100, the smaller one first.';
  const purity = { low: least / 100, high: most / 100 };
  return { kind: 'formula', formula: formula.trim(), purity, gangue: gangue.trim() || null };
}

function optional(typed: string): number | null | undefined {
  if (!typed.trim()) return null;
  const value = readNumber(typed);
  return value === null || value < 0 ? undefined : value;
}
