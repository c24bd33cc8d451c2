import type { Amount } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import type { RandomStream } from '../statistics/random.ts';

/** One oxide ready to be drawn, wt%. */
export interface DrawableAmount {
  readonly value: number;
  /** Standard uncertainty of the mean that is used. */
  readonly sigma: number;
  /** Degrees of freedom of σ; 0 stands for a known one. */
  readonly df: number;
  /** One step of the last digit. */
  readonly step: number;
  /** Below detection: the limit; 0 for a value that was detected. */
  readonly below: number;
}

/**
 * Prepares an amount for drawing: its σ with its degrees of freedom (whole, rounded down); a missing σ becomes
 * `assumedRelative` of the value (0 when null). Throws below detection without a limit, naming oxide and sample.
 * @example
 * amount = { value: 2, limit: null, sigma: 0.1, sigmaBasis: 'spots', sigmaDf: 8, resolution: 0.1 }
 * drawable(amount, { name: 'MgO of T1', assumedRelative: null, limit: null }) // { value: 2, sigma: 0.1, df: 8, step: 0.1, below: 0 }
 * drawable({ value: null, limit: null }, { name: 'MgO of T1', assumedRelative: null, limit: null }) // throws MgO of T1 has none
 */
export function drawable(amount: Amount, { name, assumedRelative, limit }: DrawableContext): DrawableAmount {
  const below = limit ?? amount.limit;
  if (amount.value === null || amount.value === 0) {
    if (below === null)
      throw new RequirementError(`a value below detection needs a limit to be drawn under; ${name} has none`);
    return { value: 0, sigma: 0, df: 0, step: 0, below };
  }
  return {
    value: amount.value,
    sigma: amount.sigma ?? (assumedRelative ?? 0) * amount.value,
    df: amount.sigmaDf ? Math.max(1, Math.floor(amount.sigmaDf)) : 0,
    step: amount.resolution ?? 0,
    below: 0,
  };
}

export interface DrawableContext {
  readonly name: string;
  readonly assumedRelative: number | null;
  /** Detection limit set by hand, wt%. */
  readonly limit: number | null;
}

/**
 * One draw of an amount: normal about the value, or Student's t scaled by σ where σ came from spots (JCGM 101:2008,
 * 6.4.9), and uniform over one step of the last digit for rounding (6.4.2); below detection uniform from 0 to the
 * limit. May be negative.
 * @example
 * drawAmount({ value: 2, sigma: 0, df: 0, step: 0, below: 0 }, randomStream(1)) // 2
 * drawAmount({ value: 0, sigma: 0, df: 0, step: 0, below: 0.1 }, randomStream(1)) < 0.1 // true
 */
export function drawAmount(amount: DrawableAmount, random: RandomStream): number {
  if (amount.below > 0) return amount.below * random.uniform();
  let x = amount.value;
  if (amount.sigma > 0) x += amount.sigma * drawStudent(amount.df, random);
  if (amount.step > 0) x += amount.step * (random.uniform() - 0.5);
  return x;
}

/**
 * A draw from Student's t with whole df, or from the normal distribution where df is 0 or above 200.
 * @example
 * Number.isFinite(drawStudent(3, randomStream(1))) // true
 */
export function drawStudent(df: number, random: RandomStream): number {
  const z = random.normal();
  if (df === 0 || df > 200) return z;
  let square = 0;
  for (let i = 0; i < df; i++) square += random.normal() ** 2;
  return z / Math.sqrt(square / df);
}
