import { ATOMIC_WEIGHTS } from '../chemistry/atomic-weights.ts';
import { molarMass, parseFormula } from '../chemistry/formula.ts';
import { elementOf } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';
import { MASS_ATTENUATION, TABLE_ENERGIES, XRAY_LINES } from './attenuation.generated.ts';

/** Oxides in wt%; need not sum to 100. */
export type Percentages = Readonly<Record<string, number>>;

/** A characteristic X-ray line, and the edge a beam must reach to excite it, keV. */
export interface XrayLine {
  readonly element: string;
  readonly shell: 'K' | 'L' | 'M';
  readonly energy: number;
  readonly edge: number;
}

/**
 * Mass fractions of the elements in a composition given as oxides (wt%), closed to 1.
 * @example
 * elementFractions({ PbO: 100 }) // { Pb: 0.92832, O: 0.07168 }
 */
export function elementFractions(oxides: Percentages): Record<string, number> {
  const total = Object.values(oxides).reduce((sum, wt) => sum + wt, 0);
  if (!(total > 0))
    throw new RequirementError('a composition needs at least one oxide above 0 wt%; it is empty');
  const found: Record<string, number> = {};
  for (const [oxide, wt] of Object.entries(oxides)) {
    const { elements } = parseFormula(oxide);
    const mass = molarMass(oxide);
    for (const [symbol, count] of Object.entries(elements))
      found[symbol] = (found[symbol] ?? 0) + ((wt / total) * count * ATOMIC_WEIGHTS[symbol]!.weight) / mass;
  }
  return found;
}

/**
 * Mass attenuation coefficient μ/ρ (cm²/g) of a composition at an energy of the table (keV), summed over elements by
 * mass: total coefficients of xraylib 4 (doi 10.1016/j.sab.2011.09.011). Throws off the table's energies, and for an
 * element that the table lacks.
 * @example
 * massAttenuation({ PbO: 100 }, 6.3995) // 371.03
 * massAttenuation({ PbO: 100 }, 6.5) // throws an energy of the table
 */
export function massAttenuation(oxides: Percentages, energy: number): number {
  const column = TABLE_ENERGIES.indexOf(energy);
  if (column < 0)
    throw new RequirementError(`attenuation needs an energy of the table; ${energy} keV is not in it`);
  return Object.entries(elementFractions(oxides)).reduce((sum, [symbol, fraction]) => {
    const row = MASS_ATTENUATION[symbol];
    if (!row) throw new RequirementError(`attenuation needs an element of the table; ${symbol} is not in it`);
    return sum + fraction * row[column]!;
  }, 0);
}

/**
 * The line by which an oxide's element is usually read with a beam of given energy (keV): the K line where the beam
 * reaches its edge, else L, else M. Null when no line of the table is excited, or the element is too light.
 * @example
 * lineOf('Fe2O3', 20) // { element: 'Fe', shell: 'K', energy: 6.3995 }
 * lineOf('PbO', 20).shell // 'L'
 * lineOf('PbO', 12).shell // 'M'
 * lineOf('B2O3', 20) // null
 */
export function lineOf(oxide: string, beam: number): XrayLine | null {
  const element = elementOf(oxide);
  const lines = XRAY_LINES.filter(([symbol, , , edge]) => symbol === element && edge < beam);
  const [symbol, shell, energy, edge] = lines[0] ?? [];
  return symbol && shell && energy && edge ? { element: symbol, shell, energy, edge } : null;
}
