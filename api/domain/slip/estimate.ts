import { consistencyOf, riseFor95, twoSided95 } from './consistency.ts';
import { type Profile, profile } from './minimise.ts';
import type { FractionEstimate } from './types.ts';

/** χ² against f, and what is needed to turn its profile into an estimate. */
export interface FractionFit {
  readonly kind: FractionEstimate['kind'];
  readonly chiSquare: (f: number) => number;
  /** Observations less parameters. */
  readonly fitDf: number;
  /** Effective degrees of freedom of the uncertainties themselves, at a given f. */
  readonly df: (f: number) => number | null;
}
type Fitted = Pick<
  FractionEstimate,
  'kind' | 'f' | 'unbounded' | 'low' | 'high' | 'sigma' | 'df' | 'consistency'
>;

/** Beyond 0–1 by half, so that noise about nothing or all is seen for what it is before it is cut off. */
const RANGE = { from: -0.5, to: 1.5 };

/**
 * Turns χ²(f) into f with a 95 % interval: where χ² stays within the squared quantile of its least (a profile;
 * York et al. 2004, doi 10.1119/1.1632486, weigh residuals the same way), widened where the fit is inconsistent.
 * f and its interval are kept within 0–1; `unbounded` is not.
 * @example
 * estimateFraction({ kind: 'batch', chiSquare: (f) => ((f - 0.3) / 0.05) ** 2, fitDf: 0, df: () => null }) // { f: 0.3, low: 0.202002, high: 0.397998, sigma: 0.05 }
 */
export function estimateFraction({ kind, chiSquare, fitDf, df }: FractionFit): Fitted {
  const best = profile(chiSquare, { ...RANGE, rise: () => 1 }).best;
  const ownDf = df(best);
  const found = profile(chiSquare, { ...RANGE, rise: (least) => riseFor95(least, { fitDf, df: ownDf }) });
  const consistency = fitDf >= 1 ? consistencyOf(found.least, fitDf, ownDf) : null;
  const usedDf = consistency?.agree === false ? Math.min(fitDf, ownDf ?? fitDf) : ownDf;
  return { kind, ...ends(found, usedDf), df: usedDf, consistency };
}

function ends({ best, low, high }: Profile, df: number | null) {
  const within = (x: number) => Math.min(1, Math.max(0, x));
  const [from, to] = [low ?? RANGE.from, high ?? RANGE.to];
  return {
    f: within(best),
    unbounded: best,
    low: within(from),
    high: within(to),
    sigma: (to - from) / 2 / twoSided95(df),
  };
}

/**
 * Why an interval says nothing about f: it holds every value from no slip to all slip. Null when it says something.
 * @example
 * tellsNothing({ low: 0, high: 1 }, 'slip and batch') // 'f cannot be told: no slip (f = 0) and nothing but slip (f = 1) explain the reading equally well within its uncertainty (slip and batch)'
 * tellsNothing({ low: 0.1, high: 0.4 }, '') // null
 */
export function tellsNothing(
  { low, high }: Pick<FractionEstimate, 'low' | 'high'>,
  condition: string,
): string | null {
  if (low > 0 || high < 1) return null;
  return `f cannot be told: no slip (f = 0) and nothing but slip (f = 1) explain the reading equally well within its uncertainty (${condition})`;
}
