import { RequirementError } from '../requirement.ts';
import type { Analysed, Measurement } from './types.ts';

/**
 * An oxide of an analysis as value and variance (wt%): its standard uncertainty, with the degrees of freedom of that
 * where it was found from spots, and the rounding of the last digit as a uniform error (resolution²/12). Below
 * detection: uniform between 0 and the limit (JCGM 100:2008, 4.3.7).
 * Throws when the oxide was not measured, or carries neither uncertainty, rounding nor limit.
 * @example
 * paint = { label: 'T1', spots: 1, amounts: { TiO2: { value: 0.3, limit: null, sigma: 0.03, sigmaBasis: 'stated', resolution: null } } }
 * measurementOf(paint, 'TiO2') // { value: 0.3, variance: 0.0009, df: null }
 * measurementOf(paint, 'MgO') // throws MgO of T1 was not measured
 */
export function measurementOf(analysed: Analysed, oxide: string): Measurement {
  const amount = analysed.amounts[oxide];
  if (!amount)
    throw new RequirementError(
      `a slip calculation needs every oxide it uses; ${oxide} of ${analysed.label} was not measured`,
    );
  if (amount.value === null || (amount.value === 0 && amount.limit !== null))
    return belowLimit(analysed, oxide);
  const rounding = (amount.resolution ?? 0) ** 2 / 12;
  const variance = (amount.sigma ?? 0) ** 2 + rounding;
  return { value: amount.value, variance, df: amount.sigmaDf ?? null };
}

function belowLimit(analysed: Analysed, oxide: string): Measurement {
  const limit = analysed.amounts[oxide]!.limit;
  if (limit === null)
    throw new RequirementError(
      `a value below detection needs its limit; ${oxide} of ${analysed.label} has none`,
    );
  return { value: limit / 2, variance: limit ** 2 / 12, df: null };
}

/**
 * As `measurementOf`, for a weighted fit: throws when there is no uncertainty to weight by.
 * @example
 * paint = { label: 'T1', spots: 1, amounts: { MgO: { value: 1, limit: null, sigma: null, sigmaBasis: null, resolution: null } } }
 * weighable(paint, 'MgO') // throws MgO of T1 has none
 */
export function weighable(analysed: Analysed, oxide: string): Measurement {
  const found = measurementOf(analysed, oxide);
  if (found.variance > 0) return found;
  throw new RequirementError(
    `a weighted fit needs an uncertainty for every oxide; ${oxide} of ${analysed.label} has none: state it, or accept an assumed one`,
  );
}

/**
 * Oxides measured in every one of the analyses, in the order of the first.
 * @example
 * sharedOxides([{ amounts: { SiO2: {}, PbO: {} } }, { amounts: { PbO: {}, SnO2: {} } }]) // ['PbO']
 */
export function sharedOxides(all: readonly Pick<Analysed, 'amounts'>[]): string[] {
  const [first, ...rest] = all;
  return Object.keys(first?.amounts ?? {}).filter((oxide) => rest.every((a) => a.amounts[oxide]));
}
