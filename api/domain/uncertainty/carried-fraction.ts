import { RequirementError } from '../requirement.ts';
import type { FractionEstimate } from '../slip/types.ts';
import type { CarriedFraction } from './types.ts';

/**
 * An estimated slip fraction ready to be carried through draws: about its value as computed, with its own σ and
 * degrees of freedom. Throws when f cannot be told.
 * @example
 * carriedFraction({ unbounded: 0.2, sigma: 0.01, df: 5, kind: 'batch', cannotTell: null }) // { f: 0.2, sigma: 0.01, df: 5, from: 'batch' }
 * carriedFraction({ unbounded: 0.2, sigma: 0.6, df: 5, kind: 'batch', cannotTell: 'f cannot be told' }) // throws cannot be told
 */
export function carriedFraction(
  estimate: Pick<FractionEstimate, 'unbounded' | 'sigma' | 'df' | 'kind' | 'cannotTell'>,
): CarriedFraction {
  const { unbounded: f, sigma, df, kind, cannotTell } = estimate;
  if (cannotTell)
    throw new RequirementError(`carrying a slip fraction needs one that can be told; ${cannotTell}`);
  return { f, sigma, df, from: kind };
}

/**
 * A slip fraction set by hand, taken as exact. Throws unless 0 ≤ f ≤ 0.99.
 * @example
 * statedFraction(0.2) // { f: 0.2, sigma: 0 }
 * statedFraction(1.2) // throws it is 1.2
 */
export function statedFraction(f: number): CarriedFraction {
  if (!(f >= 0 && f <= 0.99))
    throw new RequirementError(`a slip fraction set by hand needs to lie within 0–0.99; it is ${f}`);
  return { f, sigma: 0, df: null, from: 'stated' };
}
