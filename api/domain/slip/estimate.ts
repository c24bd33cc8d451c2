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
  'kind' | 'f' | 'unbounded' | 'low' | 'high' | 'sigma' | 'df' | 'consistency' | 'warnings'
>;

/** Beyond 0–1 by half, so that noise about nothing or all is seen for what it is before it is cut off. */
const SEARCHED = { from: -0.5, to: 1.5 } as const;

/**
 * Turns χ²(f) into f with a 95 % interval: where χ² stays within the squared quantile of its least (a profile;
 * York et al. 2004, doi 10.1119/1.1632486, weigh residuals the same way), widened where the fit is inconsistent.
 * f and its interval are kept within 0–1; `unbounded` is not. Searched from −0.5 to 1.5: `warnings` says where the
 * interval runs off that.
 * @example
 * estimateFraction({ kind: 'batch', chiSquare: (f) => ((f - 0.3) / 0.05) ** 2, fitDf: 0, df: () => null }) // { f: 0.3, low: 0.202002, high: 0.397998, sigma: 0.05 }
 */
export function estimateFraction({ kind, chiSquare, fitDf, df }: FractionFit): Fitted {
  const best = profile(chiSquare, { ...SEARCHED, rise: () => 1 }).best;
  const ownDf = df(best);
  const found = profile(chiSquare, { ...SEARCHED, rise: (least) => riseFor95(least, { fitDf, df: ownDf }) });
  const consistency = fitDf >= 1 ? consistencyOf(found.least, fitDf, ownDf) : null;
  const usedDf = consistency?.agree === false ? Math.min(fitDf, ownDf ?? fitDf) : ownDf;
  return { kind, ...ends(found, usedDf), df: usedDf, consistency, warnings: cutOff(found) };
}

/** Where the interval runs off what was searched, its half-width is a lower bound. */
function cutOff({ low, high }: Profile): string[] {
  if (low !== null && high !== null) return [];
  const side = low === null && high === null ? 'on both sides' : low === null ? 'below' : 'above';
  return [
    `The interval of f runs off the range searched (${minus(SEARCHED.from)} to ${SEARCHED.to}) ${side}: the uncertainty of f is at least what is given.`,
  ];
}

const minus = (x: number | string) => String(x).replace('-', '−');

function ends({ best, low, high }: Profile, df: number | null) {
  const within = (x: number) => Math.min(1, Math.max(0, x));
  const [from, to] = [low ?? SEARCHED.from, high ?? SEARCHED.to];
  return {
    f: within(best),
    unbounded: best,
    low: within(from),
    high: within(to),
    sigma: (to - from) / 2 / twoSided95(df),
  };
}

/**
 * Why an interval says nothing about f: it holds every value from no slip to all slip, or none of them (the reading
 * lies beyond one of the two, so they cannot be all that was read). Null when it says something.
 * @example
 * tellsNothing({ low: 0, high: 1, unbounded: 0.4 }, 'slip and batch') // 'f cannot be told: no slip (f = 0) and nothing but slip (f = 1) explain the reading equally well within its uncertainty (slip and batch)'
 * tellsNothing({ low: 0, high: 0, unbounded: -0.1 }, 'angle 40°') // 'f cannot be told: the reading lies beyond the paint without slip, on the side away from the slip (f = −0.100, and no value from 0 to 1 explains it within its uncertainty; angle 40°)'
 * tellsNothing({ low: 0.1, high: 0.4, unbounded: 0.2 }, '') // null
 */
export function tellsNothing(
  { low, high, unbounded }: Pick<FractionEstimate, 'low' | 'high' | 'unbounded'>,
  condition: string,
): string | null {
  if (high <= 0 || low >= 1) {
    const beyond =
      high <= 0 ? 'the paint without slip, on the side away from the slip' : 'the slip, away from the paint';
    const f = minus(unbounded.toFixed(3));
    return `f cannot be told: the reading lies beyond ${beyond} (f = ${f}, and no value from 0 to 1 explains it within its uncertainty; ${condition})`;
  }
  if (low > 0 || high < 1) return null;
  return `f cannot be told: no slip (f = 0) and nothing but slip (f = 1) explain the reading equally well within its uncertainty (${condition})`;
}
