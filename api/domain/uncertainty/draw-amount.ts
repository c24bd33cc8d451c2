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
  /** Below detection: the ends of what it is drawn from, the upper one 0 for a value that was detected. */
  readonly least: number;
  readonly below: number;
}

/**
 * What a value below detection is drawn from, as shares of its limit: evenly about the share that stands in for it, as
 * far down as up to the limit (0.65 → 0.3 to 1). Samples and references are drawn alike. From 0 on, the logarithms
 * of a few draws next to nothing would make any spread so wide that a tile with thirty times the limit fits. Our own
 * convention, no published source; it keeps the mean where the replacement puts it.
 * @example
 * rangeBelow(0.65) // { least: 0.3, most: 1 }
 * rangeBelow(0.5) // { least: 0, most: 1 }
 * rangeBelow(0.3) // { least: 0, most: 0.6 }
 */
export function rangeBelow(fraction: number): { readonly least: number; readonly most: number } {
  const half = Math.min(fraction, 1 - fraction);
  return { least: fraction - half, most: fraction + half };
}

/**
 * Prepares an amount for drawing: its σ with its degrees of freedom (whole, rounded down); a missing σ becomes
 * `assumedRelative` of the value (0 when null). Throws below detection without a limit, naming oxide and sample.
 * @example
 * amount = { value: 2, limit: null, sigma: 0.1, sigmaBasis: 'spots', sigmaDf: 8, resolution: 0.1 }
 * drawable(amount, { name: 'MgO of T1', assumedRelative: null, limit: null, fraction: 0.65 }) // { value: 2, sigma: 0.1, df: 8, step: 0.1, least: 0, below: 0 }
 * drawable({ value: null, limit: 0.1 }, { name: 'MgO of T1', assumedRelative: null, limit: null, fraction: 0.65 }).least // 0.03
 * drawable({ value: null, limit: null }, { name: 'MgO of T1', assumedRelative: null, limit: null, fraction: 0.65 }) // throws MgO of T1 has none
 */
export function drawable(
  amount: Amount,
  { name, assumedRelative, limit: byHand, fraction }: DrawableContext,
): DrawableAmount {
  const limit = byHand ?? amount.limit;
  if (amount.value === null || amount.value === 0) {
    if (limit === null)
      throw new RequirementError(`a value below detection needs a limit to be drawn under; ${name} has none`);
    const { least, most } = rangeBelow(fraction);
    return { value: 0, sigma: 0, df: 0, step: 0, least: least * limit, below: most * limit };
  }
  return {
    value: amount.value,
    sigma: amount.sigma ?? (assumedRelative ?? 0) * amount.value,
    df: amount.sigmaDf ? Math.max(1, Math.floor(amount.sigmaDf)) : 0,
    step: amount.resolution ?? 0,
    least: 0,
    below: 0,
  };
}

export interface DrawableContext {
  readonly name: string;
  readonly assumedRelative: number | null;
  /** Detection limit set by hand, wt%. */
  readonly limit: number | null;
  /** Share of the limit that a value below detection is drawn about (see `rangeBelow`). */
  readonly fraction: number;
}

/**
 * One draw of an amount: normal about the value, or Student's t scaled by σ where σ came from spots (JCGM 101:2008,
 * 6.4.9), and uniform over one step of the last digit for rounding (6.4.2); below detection uniform over its
 * range. May be negative.
 * @example
 * drawAmount({ value: 2, sigma: 0, df: 0, step: 0, least: 0, below: 0 }, randomStream(1)) // 2
 * drawAmount({ value: 0, sigma: 0, df: 0, step: 0, least: 0.03, below: 0.1 }, randomStream(1)) > 0.03 // true
 */
export function drawAmount(amount: DrawableAmount, random: RandomStream): number {
  if (amount.below > 0) return amount.least + (amount.below - amount.least) * random.uniform();
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
