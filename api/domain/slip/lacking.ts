import { RequirementError } from '../requirement.ts';
import type { DrawOffOptions } from './mixing.ts';
import type { Analysed } from './types.ts';

/**
 * Oxides compared that the slip was not measured for. Throws when there are any and they are not to be taken as none
 * in it (`unmeasured` other than `none`).
 * @example
 * slip = { label: 'slip of T1', spots: 1, amounts: { SiO2: { value: 60, limit: null, sigma: 1, sigmaBasis: 'stated', resolution: null } } }
 * lackingIn(slip, ['SiO2', 'PbO'], 'none') // ['PbO']
 * lackingIn(slip, ['SiO2', 'PbO'], 'drop') // throws PbO was not measured in the slip of T1
 */
export function lackingIn(
  slip: Analysed,
  parts: readonly string[],
  unmeasured: DrawOffOptions['unmeasured'],
): string[] {
  const lacking = parts.filter((oxide) => !slip.amounts[oxide]);
  if (lacking.length === 0 || unmeasured === 'none') return lacking;
  const verb = lacking.length === 1 ? 'was' : 'were';
  throw new RequirementError(
    `drawing slip off needs every oxide that is compared; ${lacking.join(', ')} ${verb} not measured in the ${slip.label}: take it as none there, or leave it out of the comparison`,
  );
}
