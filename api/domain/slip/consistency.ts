import { chiSquareUpperTail, fUpperTail, normalQuantile, tQuantile } from '../statistics/distributions.ts';
import type { Consistency } from './types.ts';

/**
 * Tests what a fit leaves over against the uncertainties: p = P(χ²_df ≥ χ²) when these are taken as known; when they
 * were themselves found from a few spots (`sigmaDf`), χ²/df is held against F(df, sigmaDf) instead.
 * @example
 * consistencyOf(3.84146, 1).p // 0.05
 * consistencyOf(20, 4).agree // false
 * consistencyOf(20, 4, 3).agree // true
 */
export function consistencyOf(chiSquare: number, df: number, sigmaDf: number | null = null): Consistency {
  const p = sigmaDf === null ? chiSquareUpperTail(chiSquare, df) : fUpperTail(chiSquare / df, df, sigmaDf);
  const agree = p >= 0.05;
  const figures = `${statisticInWords({ chiSquare, df, sigmaDf })}, p ${p < 0.001 ? '< 0.001' : `= ${p.toFixed(3)}`}`;
  const sentence = agree
    ? `What is left unexplained is within the uncertainties (${figures}).`
    : `They disagree by more than the uncertainties allow (${figures}); the interval is widened to match.`;
  return { chiSquare, df, p, agree, sentence };
}

/** The figure that p follows from, with its degrees of freedom. */
function statisticInWords(of: { chiSquare: number; df: number; sigmaDf: number | null }): string {
  const { chiSquare, df, sigmaDf } = of;
  if (sigmaDf === null)
    return `χ² = ${chiSquare.toFixed(1)} on ${df} degree${df === 1 ? '' : 's'} of freedom`;
  return `F = χ²/df = ${(chiSquare / df).toFixed(1)} on ${df} and ${Number(sigmaDf.toFixed(1))} degrees of freedom, the uncertainties being from few spots`;
}

/**
 * Two-sided 95 % quantile: normal when the variance is known (df null), Student's t otherwise.
 * @example
 * twoSided95(null) // 1.95996
 * twoSided95(5) // 2.57058
 */
export function twoSided95(df: number | null): number {
  return df === null ? normalQuantile(0.975) : tQuantile(0.975, df);
}

/**
 * How much χ² may rise above its least within a 95 % interval: the squared quantile; where the fit is inconsistent,
 * multiplied by χ²/df with t on that df (the ratio by which the uncertainties fall short, after Birge 1932,
 * doi 10.1103/PhysRev.40.207).
 * @example
 * riseFor95(1, { fitDf: 3, df: null }) // 3.84146
 * riseFor95(30, { fitDf: 3, df: null }) // 101.276
 */
export function riseFor95(least: number, { fitDf, df }: { fitDf: number; df: number | null }): number {
  if (fitDf < 1 || consistencyOf(least, fitDf, df).agree) return twoSided95(df) ** 2;
  return (least / fitDf) * twoSided95(df === null ? fitDf : Math.min(df, fitDf)) ** 2;
}

/**
 * Effective degrees of freedom of a sum of variances (Welch–Satterthwaite; JCGM 100:2008, G.4.1). Null: all known.
 * @example
 * effectiveDf([{ variance: 1, df: 4 }, { variance: 1, df: 4 }]) // 8
 * effectiveDf([{ variance: 1, df: null }]) // null
 */
export function effectiveDf(parts: readonly { variance: number; df: number | null }[]): number | null {
  const total = parts.reduce((sum, part) => sum + part.variance, 0);
  const spread = parts.reduce((sum, { variance, df }) => sum + (df === null ? 0 : variance ** 2 / df), 0);
  return spread > 0 ? total ** 2 / spread : null;
}
