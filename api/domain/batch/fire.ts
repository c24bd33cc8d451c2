import { atomicWeight } from '../chemistry/atomic-weights.ts';
import { molarMass, parseFormula } from '../chemistry/formula.ts';
import { RequirementError } from '../requirement.ts';
import { type FiredForms, firedForm, formsInFire, VOLATILE } from './fired-forms.ts';
import { sulfideSulfur, sulfurKept, sulfurOutlook } from './sulfur.ts';
import type { Content, Gas, Span } from './types.ts';

/** How a batch is fired, as far as chemistry needs to know. */
export interface Fire {
  readonly celsius: number;
  readonly atmosphere: 'air' | 'smoke';
  readonly forms: FiredForms;
  /** Moles of sulfur kept as sulfate per mole of lead. */
  readonly sulfurPerLead: Span & { readonly central: number };
  readonly sulfurWords: string;
}

/** Which end of the sulfur range to compute. */
export type Level = 'low' | 'central' | 'high';

/** What one gram of dry material becomes. Oxides, gases and `unreported` sum to one gram (O2 may be negative). */
export interface Yield {
  /** Moles of each element that stay, per gram. */
  readonly kept: Readonly<Record<string, number>>;
  /** Grams of each oxide, in the forms of the fire. */
  readonly oxides: Readonly<Record<string, number>>;
  readonly gases: Readonly<Record<Gas, number>>;
  readonly unreported: number;
}

/**
 * Settings of a fire: peak temperature (°C), air or smoke, and the sulfur kept per lead (mol/mol), by default what
 * that temperature leads one to expect. Throws on impossible temperatures or on sulfur outside 0 to 1 per lead.
 * @example
 * fireAt({ celsius: 850 }).forms.Mn // 'Mn2O3'
 * fireAt({ celsius: 850 }).sulfurPerLead.high // 0.5
 * fireAt({ celsius: 850, sulfurPerLead: { low: 0, high: 2 } }) // throws from 0 to 1
 */
export function fireAt(settings: {
  readonly celsius: number;
  readonly atmosphere?: 'air' | 'smoke';
  readonly sulfurPerLead?: Span;
}): Fire {
  const { celsius, atmosphere = 'air', sulfurPerLead } = settings;
  const outlook = sulfurOutlook(celsius);
  const { low, high } = sulfurPerLead ?? outlook;
  if (!(low >= 0 && high >= low && high <= 1))
    throw new RequirementError(
      `sulfur kept per lead needs a range from 0 to 1 mol/mol; found ${low} to ${high}`,
    );
  return {
    celsius,
    atmosphere,
    forms: formsInFire(celsius, atmosphere),
    sulfurPerLead: { low, high, central: (low + high) / 2 },
    sulfurWords: sulfurPerLead ? 'as set by hand' : outlook.words,
  };
}

/**
 * What one gram of dry material becomes in a fire: oxides (g/g), gases (g/g, oxygen negative when taken from the
 * air) and what the analysis leaves unaccounted. Carbonates and hydroxides are taken as fully decomposed. At level
 * `high` sulfide may survive as such, since a raw charge does not always oxidise. Mass in equals mass out.
 * @example
 * fireContent(formulaContent('CaCO3'), fireAt({ celsius: 900 })).gases.CO2 // 0.439708
 * fireContent(formulaContent('PbS'), fireAt({ celsius: 850 })).oxides.PbO // 0.932867
 */
export function fireContent(content: Content, fire: Fire, level: Level = 'central'): Yield {
  const kept: Record<string, number> = {};
  const gases: Record<Gas, number> = {
    H2O: 0,
    CO2: 0,
    SO2: 0,
    O2: 0,
    N2: 0,
    halogens: 0,
    other: content.otherLoss,
  };
  let oxygen = content.moles.O ?? 0;
  for (const [element, moles] of Object.entries(content.moles)) {
    if (element === 'O') continue;
    const stays = staying(element, { content, fire, level });
    const goes = moles - stays;
    if (stays > 0) kept[element] = stays;
    if (goes > 0) oxygen -= leave(gases, element, goes);
  }
  const oxides = oxidesOf(kept, fire.forms);
  for (const [element, moles] of Object.entries(kept))
    oxygen -= moles * oxygenIn(firedForm(element, fire.forms));
  gases.O2 = oxygen * atomicWeight('O');
  return { kept, oxides, gases, unreported: content.unreported };
}

function staying(element: string, at: { content: Content; fire: Fire; level: Level }): number {
  if (element in VOLATILE) return 0;
  if (element !== 'S') return at.content.moles[element]!;
  const kept = sulfurKept(at.content, at.fire.sulfurPerLead[at.level]);
  return at.level === 'high' ? Math.max(kept, sulfideSulfur(at.content)) : kept;
}

/** Gas that an element leaves as: grams of it, and moles of oxygen in it, for a mole of the element. */
const GAS_OF: Readonly<Record<string, { gas: Gas; grams: number; oxygen: number }>> = {
  H: { gas: 'H2O', grams: molarMass('H2O') / 2, oxygen: 0.5 },
  C: { gas: 'CO2', grams: molarMass('CO2'), oxygen: 2 },
  S: { gas: 'SO2', grams: molarMass('SO2'), oxygen: 2 },
};

function leave(gases: Record<Gas, number>, element: string, moles: number): number {
  const known = GAS_OF[element];
  const gas = known?.gas ?? VOLATILE[element] ?? 'other';
  gases[gas] += moles * (known?.grams ?? atomicWeight(element));
  return moles * (known?.oxygen ?? 0);
}

const OXYGEN = new Map<string, number>();
const PER_ATOM = new Map<string, number>();

function oxygenIn(form: string): number {
  const known = OXYGEN.get(form);
  if (known !== undefined) return known;
  const { elements } = parseFormula(form);
  const other = Object.entries(elements).find(([el]) => el !== 'O')![1];
  OXYGEN.set(form, (elements.O ?? 0) / other);
  return (elements.O ?? 0) / other;
}

/**
 * Grams of an oxide (or element) that hold one mole of its element.
 * @example
 * massPerAtom('Mn2O3') // 78.9365
 * massPerAtom('PbO') // 223.199
 */
export function massPerAtom(form: string): number {
  const known = PER_ATOM.get(form);
  if (known !== undefined) return known;
  const { elements } = parseFormula(form);
  const atoms = Object.entries(elements).find(([el]) => el !== 'O');
  if (!atoms) throw new RequirementError(`an oxide needs an element besides oxygen; found ${form}`);
  PER_ATOM.set(form, molarMass(form) / atoms[1]);
  return PER_ATOM.get(form)!;
}

/**
 * Grams of each oxide from moles of each element, in the forms asked for.
 * @example
 * oxidesOf({ Fe: 0.02 }, { Fe: 'FeO' }) // { FeO: 1.43688 }
 */
export function oxidesOf(kept: Readonly<Record<string, number>>, forms: FiredForms): Record<string, number> {
  const oxides: Record<string, number> = {};
  for (const [element, moles] of Object.entries(kept)) {
    const form = firedForm(element, forms);
    oxides[form] = (oxides[form] ?? 0) + moles * massPerAtom(form);
  }
  return oxides;
}
