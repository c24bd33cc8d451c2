import { RequirementError } from '../requirement.ts';
import { INCOMING_ENERGIES } from './attenuation.generated.ts';
import { lineOf, massAttenuation, type Percentages, type XrayLine } from './attenuation.ts';

/** How an XRF beam meets a surface: its (effective) energy in keV, and both angles from the surface in degrees. */
export interface Geometry {
  readonly incoming: number;
  readonly inAngle: number;
  readonly outAngle: number;
}
/** A paint layer: oxides in wt%, density in g/cm³. */
export interface PaintLayer {
  readonly oxides: Percentages;
  readonly density: number;
}

/** How deep one oxide is read. */
export interface ReadingDepth {
  readonly oxide: string;
  readonly line: XrayLine;
  /** μ_in/sin a + μ_out/sin b, cm²/g. */
  readonly chi: number;
  /** Thickness, µm, from which 99 % of the signal comes. */
  readonly depth99: number;
}

const CM_PER_UM = 1e-4;

/**
 * Combined attenuation on the way in and out, χ = μ_in/sin a + μ_out/sin b (cm²/g), for one line.
 * Throws unless both angles lie above 0 and up to 90° and the incoming energy is one of `INCOMING_ENERGIES`.
 * @example
 * paint = { PbO: 60, SiO2: 32, Al2O3: 6, Fe2O3: 2 }
 * chiOf(paint, { incoming: 20, inAngle: 45, outAngle: 45 }, lineOf('Fe2O3', 20)) // 423.0
 */
export function chiOf(oxides: Percentages, geometry: Geometry, line: XrayLine): number {
  const { incoming, inAngle, outAngle } = geometry;
  if (!INCOMING_ENERGIES.includes(incoming))
    throw new RequirementError(
      `a reading depth needs one of these beam energies: ${INCOMING_ENERGIES.join(', ')} keV; it is ${incoming}`,
    );
  const sines = [inAngle, outAngle].map((angle) => {
    if (angle > 0 && angle <= 90) return Math.sin((angle * Math.PI) / 180);
    throw new RequirementError(
      `a beam needs an angle to the surface above 0° and up to 90°; one is ${angle}°`,
    );
  });
  return massAttenuation(oxides, incoming) / sines[0]! + massAttenuation(oxides, line.energy) / sines[1]!;
}

/**
 * Share of a substrate's signal that passes a layer: exp(−χρt), t in µm.
 * @example
 * transmission(423, { density: 4.5, thickness: 10 }) // 0.149046
 */
export function transmission(
  chi: number,
  { density, thickness }: { readonly density: number; readonly thickness: number },
): number {
  if (!(density > 0 && thickness >= 0))
    throw new RequirementError(
      `a layer needs a density above 0 and a thickness of 0 or more; they are ${density} g/cm³ and ${thickness} µm`,
    );
  return Math.exp(-chi * density * thickness * CM_PER_UM);
}

/**
 * How deep each oxide of a paint is read by XRF, for the line that the beam excites; oxides without a line are left
 * out. One energy stands for the whole beam, and fluorescence of one element by another is left aside.
 * @example
 * layer = { oxides: { PbO: 60, SiO2: 32, Al2O3: 6, Fe2O3: 2 }, density: 4.5 }
 * depths = readingDepths(layer, { incoming: 20, inAngle: 45, outAngle: 45 })
 * depths.find((d) => d.oxide === 'Fe2O3').depth99 // 24.1932
 */
export function readingDepths({ oxides, density }: PaintLayer, geometry: Geometry): ReadingDepth[] {
  transmission(0, { density, thickness: 0 });
  return Object.keys(oxides).flatMap((oxide) => {
    const line = lineOf(oxide, geometry.incoming);
    if (!line) return [];
    const chi = chiOf(oxides, geometry, line);
    return [{ oxide, line, chi, depth99: Math.log(100) / (chi * density * CM_PER_UM) }];
  });
}
