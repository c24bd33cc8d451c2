import { ATOMIC_WEIGHTS } from '../chemistry/atomic-weights.ts';
import { RequirementError } from '../requirement.ts';
import { ATOMIC_NUMBERS } from './attenuation.generated.ts';
import { elementFractions, lineOf, type Percentages, type XrayLine } from './attenuation.ts';

/** A paint under an electron beam: oxides in wt%, density in g/cm³, beam in keV. */
export interface ElectronBeam {
  readonly oxides: Percentages;
  readonly density: number;
  readonly beam: number;
}

/** How far electrons go, and from how deep each line comes, µm. */
export interface ElectronDepth {
  readonly range: number;
  readonly lines: readonly { readonly oxide: string; readonly line: XrayLine; readonly depth: number }[];
}

/**
 * Depth from which SEM-EDS reads a paint, µm. Electron range after Kanaya & Okayama 1972 (doi
 * 10.1088/0022-3727/5/1/308) in the handbook form R = 0.0276·A·E^1.67/(Z^0.89·ρ), A and Z averaged by mass; range of
 * X-ray generation after Anderson & Hasler 1966, R_x = 0.064·(E^1.68 − E_c^1.68)/ρ. Both formulas were read in open
 * code that names these sources, not in the papers. A line is taken where the beam is at least 1.5 times its edge.
 * Throws unless density and beam are above 0.
 * @example
 * electronDepth({ oxides: { PbO: 60, SiO2: 32, Al2O3: 6, Fe2O3: 2 }, density: 4.5, beam: 20 }).range // 3.482835
 */
export function electronDepth({ oxides, density, beam }: ElectronBeam): ElectronDepth {
  if (!(density > 0 && beam > 0))
    throw new RequirementError(
      `an electron range needs a density and a beam energy above 0; they are ${density} g/cm³ and ${beam} keV`,
    );
  const fractions = elementFractions(oxides);
  const lines = Object.keys(oxides).flatMap((oxide) => {
    const line = lineOf(oxide, beam / 1.5);
    return line ? [{ oxide, line, depth: (0.064 * (beam ** 1.68 - line.edge ** 1.68)) / density }] : [];
  });
  return { range: electronRange(fractions, density, beam), lines };
}

/**
 * Electron range (µm) of elements by mass fraction: Kanaya & Okayama as in `electronDepth`.
 * @example
 * electronRange({ Au: 1 }, 19.3, 20) // throws Au
 * electronRange({ C: 1 }, 2.62, 20) // 3.82254
 */
export function electronRange(
  fractions: Readonly<Record<string, number>>,
  density: number,
  beam: number,
): number {
  let [a, z] = [0, 0];
  for (const [symbol, fraction] of Object.entries(fractions)) {
    const number = ATOMIC_NUMBERS[symbol];
    if (number === undefined)
      throw new RequirementError(`an electron range needs an element of the table; ${symbol} is not in it`);
    a += fraction * ATOMIC_WEIGHTS[symbol]!.weight;
    z += fraction * number;
  }
  return (0.0276 * a * beam ** 1.67) / (z ** 0.89 * density);
}
