import { elementOf, oxideFactor } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';

/** A published line of an analysis, wt%, and how to read it. */
export interface PublishedLine {
  /** Oxides or elements as printed, wt%. */
  readonly values: Readonly<Record<string, number>>;
  /** Share of slip in the reading, 0 to below 1, and the slip's own analysis (wt%); null takes it as pure paint. */
  readonly slip: { readonly share: number; readonly values: Readonly<Record<string, number>> } | null;
  /** Grams of fired paint wanted. */
  readonly grams: number;
  /** Mass fraction of pure mineral in the galena at hand. */
  readonly galenaPurity: number;
  /** °C of the paint's firing, for the sulfate that stays. */
  readonly celsius: number;
}

const GASES_OUT = new Set(['H2O', 'CO2', 'C', 'H']);
const USUAL: Readonly<Record<string, string>> = {
  ...{
    Pb: 'PbO',
    Si: 'SiO2',
    Al: 'Al2O3',
    Fe: 'Fe2O3',
    Mn: 'MnO',
    Cu: 'CuO',
    Ca: 'CaO',
    Mg: 'MgO',
    K: 'K2O',
  },
  ...{ Na: 'Na2O', Ti: 'TiO2', P: 'P2O5', S: 'SO3' },
};

/**
 * Refuses a published line that cannot be one: unknown names, negative values, an element in two forms, totals above
 * 110 wt%, impossible shares, purities or amounts.
 * @example
 * checkLine({ values: { PbO: -1 }, slip: null, grams: 100, galenaPurity: 1, celsius: 850 }) // throws zero or more
 */
export function checkLine({ values, slip, grams, galenaPurity }: PublishedLine): void {
  for (const [name, wt] of Object.entries({ ...values, ...slip?.values })) {
    if (elementOf(name) === null)
      throw new RequirementError(`a published line needs oxides or elements; ${name} is neither`);
    if (!(wt >= 0))
      throw new RequirementError(`a published line needs values of zero or more; ${name} is ${wt}`);
  }
  requireOneForm(values);
  if (slip) requireOneForm(slip.values);
  const total = Object.values(values).reduce((sum, wt) => sum + wt, 0);
  if (!(total <= 110))
    throw new RequirementError(`a published line needs a total of at most 110 wt%; found ${total}`);
  if (slip && !(slip.share >= 0 && slip.share < 1))
    throw new RequirementError(`a share of slip needs 0 to below 1; found ${slip.share}`);
  if (!(grams > 0)) throw new RequirementError(`a walk needs grams of paint above zero; found ${grams}`);
  if (!(galenaPurity > 0 && galenaPurity <= 1))
    throw new RequirementError(`a purity needs a share above 0 and up to 1; found ${galenaPurity}`);
}

/**
 * The lead figure of a published line as printed. Throws when there is none above zero.
 * @example
 * leadEntry({ SiO2: 30, Pb: 10 }) // { name: 'Pb', value: 10 }
 */
export function leadEntry(values: PublishedLine['values']): { name: string; value: number } {
  const found = Object.entries(values).find(([name, wt]) => elementOf(name) === 'Pb' && wt > 0);
  if (!found)
    throw new RequirementError('a walk needs a lead figure (Pb or PbO) above zero; the line has none');
  return { name: found[0], value: found[1] };
}

function requireOneForm(values: PublishedLine['values']): void {
  const seen = new Map<string, string>();
  for (const name of Object.keys(values)) {
    const element = elementOf(name)!;
    const other = seen.get(element);
    if (other !== undefined && !GASES_OUT.has(name))
      throw new RequirementError(
        `a published line needs each element once; ${other} and ${name} are both ${element}`,
      );
    seen.set(element, name);
  }
}

/** Printed oxides that sum to less, wt%, leave out too much of the paint to be closed to 100. */
const ENOUGH_PRINTED = 90;

/** A published line as oxides, wt%, and what was printed of the paint before anything was closed. */
export interface PrintedPaint {
  readonly oxides: Readonly<Record<string, number>>;
  /** wt% of oxides printed, volatiles out. */
  readonly total: number;
  /** Whether the oxides were closed to 100; else they are shares of the whole paint as printed. */
  readonly closed: boolean;
}

/**
 * A published line as oxides, volatile-free: closed to 100 wt% where at least 90 wt% was printed, else left as shares
 * of a paint of which the rest was not printed. Elements become their usual oxides, lead PbO.
 * @example
 * printedPaint({ Pb: 42.707, SiO2: 46, H2O: 7 }).oxides // { PbO: 50, SiO2: 50 }
 * printedPaint({ PbO: 30 }) // { oxides: { PbO: 30 }, total: 30, closed: false }
 */
export function printedPaint(values: PublishedLine['values']): PrintedPaint {
  const printed = oxidesOf(values);
  const total = Object.values(printed).reduce((sum, wt) => sum + wt, 0);
  const closed = total >= ENOUGH_PRINTED;
  const scale = closed ? 100 / total : 1;
  const oxides = Object.fromEntries(Object.entries(printed).map(([oxide, wt]) => [oxide, wt * scale]));
  return { oxides, total, closed };
}

function oxidesOf(values: PublishedLine['values']): Record<string, number> {
  const oxides: Record<string, number> = {};
  for (const [name, wt] of Object.entries(values)) {
    if (GASES_OUT.has(name)) continue;
    const oxide = USUAL[elementOf(name)!] ?? name;
    oxides[oxide] = (oxides[oxide] ?? 0) + (wt * oxideFactor(oxide)) / oxideFactor(name);
  }
  return oxides;
}

/**
 * A closed composition's lead with a share of slip drawn off by mass; the other oxides are left as they are.
 * Throws when the share leaves no lead.
 * @example
 * withoutSlip({ PbO: 45, SiO2: 55 }, { SiO2: 100 }, 0.1).PbO // 50
 */
export function withoutSlip(
  paint: Record<string, number>,
  slip: Record<string, number>,
  share: number,
): Record<string, number> {
  const lead = (paint.PbO! - share * (slip.PbO ?? 0)) / (1 - share);
  if (!(lead > 0 && lead <= 100))
    throw new RequirementError(
      `a share of slip needs to leave between 0 and 100 wt% PbO; ${share} leaves ${lead.toFixed(1)}`,
    );
  return { ...paint, PbO: lead };
}
