import { molarMass, parseFormula } from '../chemistry/formula.ts';
import { byDisplayOrder, elementOf } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';

export interface UnityPart {
  readonly oxide: string;
  readonly moles: number;
}

/** Molecular formula after Seger: moles of each oxide for one mole of fluxes. */
export interface UnityFormula {
  readonly fluxes: readonly UnityPart[];
  readonly amphoteric: readonly UnityPart[];
  readonly acid: readonly UnityPart[];
  /** Sulfate, halogens and metals, which are no part of the glass. */
  readonly apart: readonly UnityPart[];
}

type Role = keyof UnityFormula;

/**
 * An oxide's place in a molecular formula, by oxygen per atom of its element: RO and R2O are fluxes, R2O3 amphoteric
 * (B2O3 among them), RO2 and R2O5 acid; SO3, elements and gases stand apart.
 * @example
 * unityRole('PbO') // 'fluxes'
 * unityRole('Al2O3') // 'amphoteric'
 * unityRole('SiO2') // 'acid'
 */
export function unityRole(oxide: string): Role {
  const element = elementOf(oxide);
  if (element === null || element === oxide || ['S', 'C', 'H'].includes(element)) return 'apart';
  const { elements } = parseFormula(oxide);
  const oxygen = (elements.O ?? 0) / elements[element]!;
  return oxygen <= 1 ? 'fluxes' : oxygen < 2 ? 'amphoteric' : 'acid';
}

/**
 * The unity molecular formula of a composition in wt% or grams of oxides: fluxes add to one mole. Throws when there
 * is no flux. Checked against C. F. Binns, The Potter's Craft, in the tests.
 * @example
 * unityFormula({ PbO: 223.199, SiO2: 120.166 }).acid // [{ oxide: 'SiO2', moles: 2 }]
 * unityFormula({ SiO2: 100 }) // throws at least one flux
 */
export function unityFormula(oxides: Readonly<Record<string, number>>): UnityFormula {
  const present = Object.entries(oxides)
    .filter(([, amount]) => amount > 0)
    .map(([oxide, amount]) => ({ oxide, moles: amount / molarMass(oxide) }))
    .sort((a, b) => byDisplayOrder(a.oxide, b.oxide));
  const fluxes = present.filter((part) => unityRole(part.oxide) === 'fluxes');
  const one = fluxes.reduce((sum, part) => sum + part.moles, 0);
  if (!(one > 0))
    throw new RequirementError('a unity formula needs at least one flux (RO or R2O); found none');
  const of = (role: Role) =>
    present
      .filter((part) => unityRole(part.oxide) === role)
      .map(({ oxide, moles }) => ({ oxide, moles: moles / one }));
  return { fluxes: of('fluxes'), amphoteric: of('amphoteric'), acid: of('acid'), apart: of('apart') };
}

/**
 * wt% of each oxide from moles of each oxide (a molecular formula written flat). Throws on negative moles or none.
 * @example
 * percentOfMoles({ PbO: 1, SiO2: 2 }).PbO // 65.0033
 */
export function percentOfMoles(moles: Readonly<Record<string, number>>): Record<string, number> {
  const entries = Object.entries(moles);
  const bad = entries.find(([, n]) => !(n >= 0));
  if (bad)
    throw new RequirementError(`a molecular formula needs moles of zero or more; ${bad[0]} is ${bad[1]}`);
  const grams = entries.map(([oxide, n]) => [oxide, n * molarMass(oxide)] as const);
  const total = grams.reduce((sum, [, g]) => sum + g, 0);
  if (!(total > 0))
    throw new RequirementError('a molecular formula needs at least one oxide above zero; found none');
  return Object.fromEntries(grams.map(([oxide, g]) => [oxide, (100 * g) / total]));
}
