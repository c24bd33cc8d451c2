import { RequirementError } from '../requirement.ts';
import { twoSided95 } from './consistency.ts';
import type { FractionEstimate } from './types.ts';
import type { Uptake } from './uptake.ts';
import { UPTAKE_LAWS } from './uptake-law.ts';

/**
 * Slip fraction of a sherd from its paint thickness (µm), by an uptake learnt from tiles. The 95 % interval is one
 * for a new piece: uncertainty of the depth, tile-to-tile scatter and the thickness's own uncertainty together, taken
 * on ln(t/depth), so that f stays within 0–1. Throws when the thickness is not above 0.
 * @example
 * tile = (thickness, f) => ({ label: 't' + thickness, thickness, thicknessSigma: 1, f, sigma: 0.01 })
 * uptake = fitUptake([tile(10, 0.5), tile(20, 1 / 3), tile(40, 0.2)], 'dissolved layer')
 * fractionFromThickness(uptake, { thickness: 30, sigma: 2 }).f // 0.25
 */
export function fractionFromThickness(
  uptake: Uptake,
  { thickness, sigma }: { readonly thickness: number; readonly sigma: number },
): FractionEstimate {
  if (!(thickness > 0))
    throw new RequirementError(`a fraction from thickness needs a thickness above 0 µm; it is ${thickness}`);
  const { fraction } = UPTAKE_LAWS[uptake.law];
  const { df } = uptake;
  const q = twoSided95(df);
  const spread = Math.hypot(uptake.logSigma, uptake.scatter, sigma / thickness);
  const at = (steps: number) => fraction(thickness, uptake.depth * Math.exp(steps * spread));
  const [f, low, high] = [at(0), at(-q), at(q)];
  return {
    kind: 'thickness',
    f,
    unbounded: f,
    low,
    high,
    sigma: (high - low) / 2 / q,
    df,
    consistency: uptake.consistency,
    direction: null,
    cannotTell: null,
    witnesses: [],
    assumptions: [
      uptake.reason,
      `Learnt from ${uptake.n} tiles of ${uptake.thicknesses[0]}–${uptake.thicknesses[1]} µm; the sherd is taken to have been painted and fired as they were.`,
    ],
    warnings: [...uptake.warnings, ...beyond(uptake, thickness)],
  };
}

function beyond({ thicknesses: [thin, thick] }: Uptake, thickness: number): string[] {
  if (thickness >= thin && thickness <= thick) return [];
  return [
    `${thickness} µm lies outside the tiles’ ${thin}–${thick} µm: this is an extrapolation of the law.`,
  ];
}
