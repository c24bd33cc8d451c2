import type { Amount } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import type { Analysed } from './types.ts';

/**
 * An analysis with a relative error assumed where none is known (σ = relative·value, marked as assumed), and which
 * oxides that were. The share is a technique's or a laboratory's, to be shown as assumed and editable: common
 * practice, no published source. Throws unless 0 < relative < 1.
 * @example
 * of = (sigma) => ({ value: 2, limit: null, sigma, sigmaBasis: sigma && 'stated', resolution: null })
 * found = assumeErrors({ label: 'T', spots: 1, amounts: { MgO: of(null), CaO: of(0.3) } }, 0.05)
 * found.analysed.amounts.MgO // { value: 2, sigma: 0.1, sigmaBasis: 'assumed' }
 * found.assumed // ['MgO']
 */
export function assumeErrors<A extends Analysed>(
  analysed: A,
  relative: number,
): { analysed: A; assumed: readonly string[] } {
  if (!(relative > 0 && relative < 1))
    throw new RequirementError(`an assumed relative error needs to lie between 0 and 1; it is ${relative}`);
  const lacks = ({ value, sigma }: Amount) => value !== null && value !== 0 && sigma === null;
  const entries = Object.entries(analysed.amounts);
  const amounts = entries.map(([oxide, amount]): [string, Amount] => [
    oxide,
    lacks(amount) ? { ...amount, sigma: relative * amount.value!, sigmaBasis: 'assumed' } : amount,
  ]);
  return {
    analysed: { ...analysed, amounts: Object.fromEntries(amounts) },
    assumed: entries.filter(([, amount]) => lacks(amount)).map(([oxide]) => oxide),
  };
}
