import { RequirementError } from '../requirement.ts';
import type { Amount, UncertaintyBasis } from './types.ts';

/** Two-sided 95 % of a normal distribution, in standard deviations. */
const NORMAL_95 = 1.959964;
const WIDTH: Readonly<Record<UncertaintyBasis, number>> = {
  '1σ': 1,
  '2σ': 2,
  '95 %': NORMAL_95,
  unstated: 1,
};

/**
 * One standard deviation from the figure after ±: 2σ halved, 95 % divided by 1.96; a figure whose meaning is not
 * stated is taken as 1σ, the wider reading. Throws when the figure is negative.
 * @example
 * oneSigma(0.2, '2σ') // 0.1
 * oneSigma(0.2, 'unstated') // 0.2
 */
export function oneSigma(uncertainty: number, basis: UncertaintyBasis | null): number {
  if (!(uncertainty >= 0 && uncertainty < Infinity))
    throw new RequirementError(`an uncertainty needs to be zero or more; found ${uncertainty}`);
  return uncertainty / WIDTH[basis ?? 'unstated'];
}

/**
 * A standard deviation to assume where a laboratory states none, wt%: √((r·x)² + (limit/3)²), with r the relative
 * error of the technique and a third of the detection limit as the noise of a blank (a limit of 3 σ of the blank:
 * Currie 1968, doi 10.1021/ac60259a007, from memory). Relative errors: common practice, no published source.
 * Throws when the relative error is not above zero and below one.
 * @example
 * assumedSigma(50, 0.03) // 1.5
 * assumedSigma(0.02, 0.05, 0.01) // 0.0034801
 */
export function assumedSigma(value: number, relativeError: number, limit: number | null = null): number {
  if (!(relativeError > 0 && relativeError < 1))
    throw new RequirementError(
      `an assumed relative error needs to lie between 0 and 1; found ${relativeError}`,
    );
  return Math.hypot(relativeError * value, (limit ?? 0) / 3);
}

/**
 * An amount times a factor: value, limit, standard deviation and resolution alike.
 * @example
 * scaleAmount({ value: 2, limit: null, sigma: 0.1, sigmaBasis: 'stated', resolution: 0.01 }, 10) // { value: 20, limit: null, sigma: 1, resolution: 0.1 }
 */
export function scaleAmount(amount: Amount, factor: number): Amount {
  const times = (figure: number | null) => (figure === null ? null : figure * factor);
  const { value, limit, sigma, resolution } = amount;
  return {
    ...amount,
    value: times(value),
    limit: times(limit),
    sigma: times(sigma),
    resolution: times(resolution),
  };
}

/**
 * The sum of two amounts measured independently. Below detection counts as nothing where the other is detected, and
 * the limits add up; a standard deviation or resolution that a detected one lacks is unknown in the sum.
 * @example
 * of = (value, limit, sigma) => ({ value, limit, sigma, sigmaBasis: 'stated', resolution: null })
 * addAmounts(of(1, null, 0.3), of(2, null, 0.4)) // { value: 3, limit: null, sigma: 0.5 }
 * addAmounts(of(null, 0.1, null), of(null, 0.2, null)) // { value: null, limit: 0.3 }
 */
export function addAmounts(a: Amount, b: Amount): Amount {
  const detected = [a, b].filter((amount) => amount.value !== null);
  const all = (figure: (amount: Amount) => number | null) => {
    const figures = detected.map(figure);
    return figures.length === 0 || figures.includes(null) ? null : Math.hypot(...(figures as number[]));
  };
  const sigma = all((amount) => amount.sigma);
  return {
    value: detected.length === 0 ? null : detected.reduce((sum, amount) => sum + amount.value!, 0),
    limit: sumOfLimits(a, b),
    sigma,
    sigmaBasis: sigma === null ? null : (detected[0]!.sigmaBasis ?? null),
    resolution: all((amount) => amount.resolution),
  };
}

/** Two amounts below detection have a known limit only where both have one. */
function sumOfLimits(a: Amount, b: Amount): number | null {
  const limits = [a.limit, b.limit].filter((limit) => limit !== null);
  const undetected = a.value === null && b.value === null;
  if (limits.length === 0 || (undetected && limits.length < 2)) return null;
  return limits.reduce((sum, limit) => sum + limit, 0);
}

/**
 * A figure for reading in a sentence: four significant digits, no trailing zeros.
 * @example
 * figureText(98.20349) // '98.2'
 * figureText(0.000123456) // '0.0001235'
 */
export function figureText(figure: number): string {
  return String(Number(figure.toPrecision(4)));
}
