import { RequirementError } from '../requirement.ts';
import { partMessage } from './closure.ts';

/** Share of the detection limit that stands in for a part below it: Martín-Fernández et al. 2003. */
export const REPLACEMENT_FRACTION = 0.65;

/**
 * Multiplicative replacement: a part below detection (0 or null) becomes δ = fraction·limit, and the parts detected
 * shrink by 1 − Σδ/c, where c is their sum, so that the total stays c and the ratios of detected parts stay as they
 * were. Parts and limits in the same unit; a limit is read only where it is needed. Throws when a needed limit is
 * missing or not positive, the fraction is not in (0, 1], a part is negative, or the δ leave nothing for the rest.
 * Martín-Fernández et al. 2003, doi 10.1023/A:1023866030544.
 * @example
 * multiplicativeReplacement([0.6, null, 0.4], [null, 0.01, null]) // [0.5961, 0.0065, 0.3974]
 * multiplicativeReplacement([0.6, 0, 0.4], []) // throws needs a detection limit; part 2 of 3 has none
 */
export function multiplicativeReplacement(
  parts: readonly (number | null)[],
  limits: readonly (number | null | undefined)[],
  { fraction = REPLACEMENT_FRACTION }: { readonly fraction?: number } = {},
): number[] {
  if (!(fraction > 0 && fraction <= 1))
    throw new RequirementError(`replacement needs a fraction above 0 and at most 1; found ${fraction}`);
  const total = detectedSum(parts);
  const deltas = parts.map((part, at) => (part ? 0 : fraction * limitOf(parts, limits, at)));
  const replaced = deltas.reduce((sum, delta) => sum + delta, 0);
  if (!(replaced < total))
    throw new RequirementError(
      `replacement needs detected parts that outweigh the rest; ${replaced} would replace ${total}`,
    );
  return parts.map((part, at) => (part ? part * (1 - replaced / total) : deltas[at]!));
}

function detectedSum(parts: readonly (number | null)[]): number {
  return parts.reduce<number>((sum, part, at) => {
    if (part !== null && !(part >= 0 && part < Infinity))
      throw new RequirementError(partMessage('replacement needs parts of zero or more', parts, at));
    return sum + (part ?? 0);
  }, 0);
}

function limitOf(
  parts: readonly unknown[],
  limits: readonly (number | null | undefined)[],
  at: number,
): number {
  const limit = limits[at];
  if (limit === null || limit === undefined)
    throw new RequirementError(
      `a part below detection needs a detection limit; part ${at + 1} of ${parts.length} has none`,
    );
  if (!(limit > 0 && limit < Infinity))
    throw new RequirementError(partMessage('a detection limit needs to be above zero', limits, at));
  return limit;
}
