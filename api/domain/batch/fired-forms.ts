import { elementOf, OXIDES } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';

/** The oxide that each element is written as; elements that are not named take the first known oxide. */
export type FiredForms = Readonly<Record<string, string>>;

/** How analyses are usually written: all iron as Fe2O3, manganese as MnO, copper as CuO, lead as PbO. */
export const REPORTED_FORMS: FiredForms = { Fe: 'Fe2O3', Mn: 'MnO', Cu: 'CuO', Pb: 'PbO', S: 'SO3' };

/** Elements that leave as gas, with the gas. */
export const VOLATILE: Readonly<Record<string, 'H2O' | 'CO2' | 'N2' | 'halogens'>> = {
  H: 'H2O',
  C: 'CO2',
  N: 'N2',
  F: 'halogens',
  Cl: 'halogens',
  Br: 'halogens',
  I: 'halogens',
};

const METALS = new Set(['Au', 'Pt']);
const FIRST = new Map<string, string>();
for (const oxide of OXIDES) {
  const element = elementOf(oxide);
  if (element && !FIRST.has(element)) FIRST.set(element, oxide);
}

/**
 * The form in which an element stays behind: the one asked for, else its first known oxide; gold and platinum stay
 * metals. Throws for an element that leaves nothing known behind.
 * @example
 * firedForm('Mn', { Mn: 'Mn2O3' }) // 'Mn2O3'
 * firedForm('Ca', {}) // 'CaO'
 * firedForm('He', {}) // throws neither an oxide nor a gas
 */
export function firedForm(element: string, forms: FiredForms): string {
  const form = forms[element] ?? (METALS.has(element) ? element : FIRST.get(element));
  if (form === undefined)
    throw new RequirementError(
      `a material needs elements that fire to an oxide or a gas; ${element} gives neither an oxide nor a gas known here`,
    );
  return form;
}

/**
 * The oxides that a fire leaves, by temperature (°C) and air. In air: MnO2 up to 570 °C, Mn2O3 up to 990 °C, then
 * Mn3O4 (Mater. Trans. JIM 22:4); CuO up to 1026 °C, then Cu2O (from memory, no source read). In smoke: FeO, MnO,
 * Cu2O, an assumption. They set the mass lost in the fire; analyses are compared in `REPORTED_FORMS`.
 * @example
 * formsInFire(850, 'air').Mn // 'Mn2O3'
 * formsInFire(850, 'smoke').Fe // 'FeO'
 */
export function formsInFire(celsius: number, atmosphere: 'air' | 'smoke'): FiredForms {
  if (atmosphere === 'smoke') return { Fe: 'FeO', Mn: 'MnO', Cu: 'Cu2O', Pb: 'PbO', S: 'SO3' };
  const manganese = celsius < 570 ? 'MnO2' : celsius < 990 ? 'Mn2O3' : 'Mn3O4';
  return { Fe: 'Fe2O3', Mn: manganese, Cu: celsius < 1026 ? 'CuO' : 'Cu2O', Pb: 'PbO', S: 'SO3' };
}
