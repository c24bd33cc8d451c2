import betainc from '@stdlib/math-base-special-betainc';
import gammainc from '@stdlib/math-base-special-gammainc';
import chiSquare from '@stdlib/stats-base-dists-chisquare';
import f from '@stdlib/stats-base-dists-f';
import normal from '@stdlib/stats-base-dists-normal';
import t from '@stdlib/stats-base-dists-t';
import { RequirementError } from '../requirement.ts';

function needPositive(name: string, values: Readonly<Record<string, number>>): void {
  for (const [key, value] of Object.entries(values))
    if (!(value > 0 && value < Number.POSITIVE_INFINITY))
      throw new RequirementError(`${name} needs ${key} > 0; found ${value}`);
}

function needProbability(name: string, p: number): void {
  if (!(p > 0 && p < 1))
    throw new RequirementError(`${name} needs a probability between 0 and 1; found ${p}`);
}

function needNumber(name: string, x: number): void {
  if (Number.isNaN(x)) throw new RequirementError(`${name} needs a number; found NaN`);
}

/**
 * Upper tail of the F distribution with d1 and d2 degrees of freedom: P(F > x), computed as an incomplete beta
 * function from the small side, so that tiny tails keep their digits (1 − CDF would lose them).
 * Throws when a degree of freedom is not positive.
 *
 * @example
 * fUpperTail(2.5, 8, 13) // 0.06865383
 * fUpperTail(300, 3, 18) // 1.4963412e-15
 * fUpperTail(1, 0, 4) // throws fUpperTail needs d1 > 0; found 0
 */
export function fUpperTail(x: number, d1: number, d2: number): number {
  needPositive('fUpperTail', { d1, d2 });
  needNumber('fUpperTail', x);
  if (x <= 0) return 1;
  const y = d1 * x;
  if (y === Number.POSITIVE_INFINITY) return 0;
  // The smaller of the two arguments is the one without rounding trouble.
  return y > d2
    ? betainc(d2 / (d2 + y), d2 / 2, d1 / 2, true, false)
    : betainc(y / (d2 + y), d1 / 2, d2 / 2, true, true);
}

/**
 * Quantile of the F distribution: the x with P(F ≤ x) = p. Throws unless 0 < p < 1 and d1, d2 > 0.
 *
 * @example
 * fQuantile(0.95, 2, 18) // 3.55456
 */
export function fQuantile(p: number, d1: number, d2: number): number {
  needPositive('fQuantile', { d1, d2 });
  needProbability('fQuantile', p);
  return f.quantile(p, d1, d2);
}

/**
 * Upper tail of the beta distribution: P(B > x), without cancellation. Throws when a or b is not positive.
 *
 * @example
 * betaUpperTail(0.99, 4, 6) // 8.1858844e-11
 */
export function betaUpperTail(x: number, a: number, b: number): number {
  needPositive('betaUpperTail', { a, b });
  needNumber('betaUpperTail', x);
  if (x <= 0) return 1;
  return x >= 1 ? 0 : betainc(x, a, b, true, true);
}

/**
 * Upper tail of the χ² distribution with df degrees of freedom, without cancellation. Throws when df ≤ 0.
 *
 * @example
 * chiSquareUpperTail(80, 8) // 4.8888645e-14
 */
export function chiSquareUpperTail(x: number, df: number): number {
  needPositive('chiSquareUpperTail', { df });
  needNumber('chiSquareUpperTail', x);
  if (x <= 0) return 1;
  return x === Number.POSITIVE_INFINITY ? 0 : gammainc(x / 2, df / 2, true, true);
}

/**
 * Quantile of the χ² distribution. Throws unless 0 < p < 1 and df > 0.
 *
 * @example
 * chiSquareQuantile(0.95, 3) // 7.81473
 */
export function chiSquareQuantile(p: number, df: number): number {
  needPositive('chiSquareQuantile', { df });
  needProbability('chiSquareQuantile', p);
  return chiSquare.quantile(p, df);
}

/**
 * Upper tail of the standard normal distribution: P(Z > z), without cancellation.
 *
 * @example
 * normalUpperTail(1.959964) // 0.025
 */
export function normalUpperTail(z: number): number {
  needNumber('normalUpperTail', z);
  return normal.cdf(-z, 0, 1);
}

/**
 * Quantile of the standard normal distribution. Throws unless 0 < p < 1.
 *
 * @example
 * normalQuantile(0.975) // 1.959964
 */
export function normalQuantile(p: number): number {
  needProbability('normalQuantile', p);
  return normal.quantile(p, 0, 1);
}

/**
 * Upper tail of Student's t with df degrees of freedom: P(T > x), without cancellation. Throws when df ≤ 0.
 *
 * @example
 * tUpperTail(2.262157, 9) // 0.025
 */
export function tUpperTail(x: number, df: number): number {
  needPositive('tUpperTail', { df });
  needNumber('tUpperTail', x);
  return t.cdf(-x, df);
}

/**
 * Quantile of Student's t. Throws unless 0 < p < 1 and df > 0.
 *
 * @example
 * tQuantile(0.975, 9) // 2.262157
 */
export function tQuantile(p: number, df: number): number {
  needPositive('tQuantile', { df });
  needProbability('tQuantile', p);
  return t.quantile(p, df);
}
