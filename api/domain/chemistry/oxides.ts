import { RequirementError } from '../requirement.ts';
import { ATOMIC_WEIGHTS, atomicWeight } from './atomic-weights.ts';
import { molarMass, parseFormula } from './formula.ts';

/** Oxides known by name, in the order in which they are shown: glass formers first, then bases, then traces. */
export const OXIDES: readonly string[] = [
  ...['SiO2', 'Al2O3', 'B2O3', 'PbO', 'PbO2', 'Pb3O4', 'Fe2O3', 'FeO', 'Fe3O4', 'MnO', 'MnO2', 'Mn2O3'],
  ...[
    'Mn3O4',
    'CuO',
    'Cu2O',
    'TiO2',
    'CaO',
    'MgO',
    'K2O',
    'Na2O',
    'Li2O',
    'P2O5',
    'SO3',
    'SO2',
    'SnO2',
    'SnO',
  ],
  ...[
    'Sb2O3',
    'Sb2O5',
    'ZnO',
    'BaO',
    'SrO',
    'ZrO2',
    'CoO',
    'Co3O4',
    'NiO',
    'Cr2O3',
    'V2O5',
    'As2O3',
    'As2O5',
  ],
  ...[
    'Rb2O',
    'Cs2O',
    'BeO',
    'Ag2O',
    'CdO',
    'Bi2O3',
    'Sc2O3',
    'Ga2O3',
    'GeO2',
    'Y2O3',
    'Nb2O5',
    'MoO3',
    'WO3',
  ],
  ...['HfO2', 'Ta2O5', 'La2O3', 'CeO2', 'Pr2O3', 'Nd2O3', 'Sm2O3', 'Eu2O3', 'Gd2O3', 'ThO2', 'UO2', 'U3O8'],
  ...['Tl2O', 'In2O3', 'HgO', 'SeO2', 'TeO2', 'CO2', 'H2O'],
];

/** Elements that laboratories report as themselves, not as an oxide. */
export const NON_OXIDES: readonly string[] = ['S', 'F', 'Cl', 'Br', 'I', 'C', 'N', 'H', 'O', 'Au', 'Pt'];

const ORDER = new Map([...OXIDES, ...NON_OXIDES].map((name, at) => [name, at]));

/**
 * Compares two oxides or elements by display order; unknown ones come last, by name.
 * @example
 * ['MgO', 'SiO2', 'PbO'].sort(byDisplayOrder) // ['SiO2', 'PbO', 'MgO']
 */
export function byDisplayOrder(a: string, b: string): number {
  const [i, j] = [ORDER.get(a) ?? ORDER.size, ORDER.get(b) ?? ORDER.size];
  return i - j || (a < b ? -1 : Number(a > b));
}

/**
 * The element that an oxide or element symbol stands for: its one constituent besides oxygen; null for LOI, Total
 * and anything with two such constituents.
 * @example
 * elementOf('Fe2O3') // 'Fe'
 * elementOf('Pb') // 'Pb'
 * elementOf('LOI') // null
 */
export function elementOf(analyte: string): string | null {
  if (Object.hasOwn(ATOMIC_WEIGHTS, analyte)) return analyte;
  return readOxide(analyte)?.element ?? null;
}

interface Oxide {
  readonly element: string;
  readonly factor: number;
}

/** Known oxides are read once: a comparison asks for them tens of thousands of times. */
const READ = new Map<string, Oxide>();

function readOxide(text: string): Oxide | null {
  const known = READ.get(text);
  if (known) return known;
  const atoms = binaryOxide(text);
  const element = Object.keys(atoms ?? {}).find((symbol) => symbol !== 'O');
  if (!atoms || element === undefined) return null;
  const oxide = { element, factor: molarMass(text) / (atoms[element]! * atomicWeight(element)) };
  if (ORDER.has(text)) READ.set(text, oxide);
  return oxide;
}

function binaryOxide(text: string): Readonly<Record<string, number>> | null {
  if (!/^[A-Z][a-z]?\d*O\d*$/.test(text)) return null;
  try {
    const { elements } = parseFormula(text);
    return Object.keys(elements).length === 2 && elements.O ? elements : null;
  } catch {
    return null;
  }
}

/**
 * Mass of an oxide that holds one gram of its element (1 for an element itself), from IUPAC 2021 atomic weights
 * (doi 10.1515/pac-2019-0603). Throws when the text is neither an element nor a simple oxide.
 * @example
 * oxideFactor('PbO') // 1.07722
 * oxideFactor('Fe2O3') // 1.42973
 * oxideFactor('Pb') // 1
 * oxideFactor('LOI') // throws an element or a simple oxide
 */
export function oxideFactor(oxide: string): number {
  if (Object.hasOwn(ATOMIC_WEIGHTS, oxide)) return 1;
  const known = readOxide(oxide);
  if (!known)
    throw new RequirementError(`an oxide factor needs an element or a simple oxide; ${oxide} is neither`);
  return known.factor;
}

/**
 * How far an element's natural interval of atomic weights moves its oxide factor: [lowest, highest].
 * Lead's isotopes differ from ore to ore, so PbO carries 0.03 % that no weighing can remove.
 * Intervals: IUPAC 2021 (doi 10.1515/pac-2019-0603); oxygen's own interval is too narrow to show.
 * @example
 * oxideFactorInterval('PbO') // [1.07694, 1.07761]
 */
export function oxideFactorInterval(oxide: string): readonly [number, number] {
  const factor = oxideFactor(oxide);
  const { weight, interval } = ATOMIC_WEIGHTS[elementOf(oxide)!]!;
  const [low, high] = interval ?? [weight, weight];
  const at = (w: number) => 1 + ((factor - 1) * weight) / w;
  return [at(high), at(low)];
}

/**
 * Mass of one form of an element that holds as much of it as `wt` of another: `convertForm(10, 'FeO', 'Fe2O3')`.
 * Any unit of mass or mass fraction; throws when the two forms are not of one element.
 * @example
 * convertForm(10, 'FeO', 'Fe2O3') // 11.1134
 * convertForm(1, 'FeO', 'MnO') // throws one element
 */
export function convertForm(wt: number, from: string, to: string): number {
  if (from === to) return wt;
  const [before, after] = [oxideFactor(from), oxideFactor(to)];
  if (elementOf(from) !== elementOf(to))
    throw new RequirementError(`a change of form needs two forms of one element; found ${from} and ${to}`);
  return (wt * after) / before;
}
