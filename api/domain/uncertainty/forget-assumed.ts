import type { Amounts } from '../composition/types.ts';

/**
 * Amounts without the errors that were only assumed from the technique, so that another assumed error can take their
 * place; stated errors and those from spots stay.
 * @example
 * forgetAssumed({ PbO: { value: 60, limit: null, sigma: 3, sigmaBasis: 'assumed', resolution: 0.1 } }).PbO // { value: 60, sigma: null, sigmaBasis: null, resolution: 0.1 }
 * forgetAssumed({ PbO: { value: 60, limit: null, sigma: 3, sigmaBasis: 'stated', resolution: null } }).PbO.sigma // 3
 */
export function forgetAssumed(amounts: Amounts): Amounts {
  return Object.fromEntries(
    Object.entries(amounts).map(([oxide, amount]) => [
      oxide,
      amount.sigmaBasis === 'assumed' ? { ...amount, sigma: null, sigmaBasis: null } : amount,
    ]),
  );
}
