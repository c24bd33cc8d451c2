import { RequirementError } from '../requirement.ts';
import { closure, partMessage } from './closure.ts';

/**
 * Centred log-ratios: ln x_j − mean(ln x), one per part, summing to zero; the same for any closure.
 * Throws when a part is zero, negative or not finite. Aitchison 1986, doi 10.1007/978-94-009-4109-0.
 * @example
 * clr([1, Math.E ** 2, Math.E]) // [-1, 1, 0]
 * clr([1, 0]) // throws clr needs positive parts; part 2 of 2 is 0
 */
export function clr(parts: readonly number[]): number[] {
  const logs = logsOf(parts, 'clr');
  const mean = logs.reduce((sum, log) => sum + log, 0) / logs.length;
  return logs.map((log) => log - mean);
}

/**
 * The composition with given centred log-ratios, closed to a total (100 by default): total·exp(z)/Σexp(z).
 * Throws when a coordinate is not finite or there is none.
 * @example
 * clrInverse([0, 0, 0, 0]) // [25, 25, 25, 25]
 */
export function clrInverse(coordinates: readonly number[], total = 100): number[] {
  if (coordinates.length === 0 || !coordinates.every(Number.isFinite))
    throw new RequirementError(`a composition needs finite log-ratios; found [${coordinates.join(', ')}]`);
  // The largest is taken out first, so that no exponential overflows.
  const largest = coordinates.reduce((a, b) => Math.max(a, b));
  return closure(
    coordinates.map((z) => Math.exp(z - largest)),
    total,
  );
}

/**
 * Natural logarithms of positive parts; `whose` names the method in the error.
 * @example
 * logsOf([1, Math.E], 'clr') // [0, 1]
 */
export function logsOf(parts: readonly number[], whose: string): number[] {
  if (parts.length === 0) throw new RequirementError(`${whose} needs at least one part; there is none`);
  return parts.map((part, at) => {
    if (!(part > 0 && part < Infinity))
      throw new RequirementError(partMessage(`${whose} needs positive parts`, parts, at));
    return Math.log(part);
  });
}
