import { byDisplayOrder } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';
import { scaleAmount } from './amount.ts';
import { REPLACEMENT_FRACTION } from './replacement.ts';
import { averageAmount } from './spot-amount.ts';
import type { Amount, Amounts, NormalisedAnalysis } from './types.ts';

/** Several analyses of one thing on one specimen, averaged. */
export interface AveragedSpots {
  /** Mean amounts closed to 100. */
  readonly amounts: Amounts;
  /** Number of analyses averaged. */
  readonly spots: number;
  /** Mean of the raw totals, wt%. */
  readonly rawTotal: number;
  readonly warnings: readonly string[];
}

type SpotAnalysis = Pick<NormalisedAnalysis, 'closed' | 'rawTotal'>;

/**
 * The mean of several normalised analyses of one thing on one specimen, closed to 100: arithmetic, since spots sample
 * the mass of one paint. Each spot is first scaled so that the oxides detected in every spot weigh the same, so an
 * oxide missing from some spots does not disturb the others; it is then the mean of the spots that have it. A spot
 * below detection counts as `fraction` (0.65) of its limit beside detected ones, is left out where it has no limit,
 * and the mean is below detection where every spot is. σ is that of the mean: the standard deviation over spots
 * (divisor n − 1) over √n, with n − 1 degrees of freedom (JCGM 100:2008, 4.2.3), never less than the stated σ leaves
 * in the mean; of a single spot, the stated one. Throws with no analysis, and when no oxide is above detection in
 * all of them.
 * @example
 * of = (value) => ({ value, limit: null, sigma: null, sigmaBasis: null, resolution: null })
 * spot = (a, b) => ({ closed: { SiO2: of(a), PbO: of(b) }, rawTotal: 99 })
 * averageSpots([spot(40, 60), spot(44, 56)]).amounts.PbO // { value: 58, sigma: 2, sigmaBasis: 'spots', sigmaDf: 1 }
 * averageSpots([]) // throws at least one analysis
 */
export function averageSpots(
  analyses: readonly SpotAnalysis[],
  { fraction = REPLACEMENT_FRACTION }: { readonly fraction?: number } = {},
): AveragedSpots {
  if (analyses.length === 0)
    throw new RequirementError('a mean of spots needs at least one analysis; there is none');
  const spots = analyses.map(({ closed }) => closed);
  const rawTotal = analyses.reduce((sum, analysis) => sum + analysis.rawTotal, 0) / analyses.length;
  if (spots.length === 1) return { amounts: spots[0]!, spots: 1, rawTotal, warnings: [] };
  const warnings: string[] = [];
  const scaled = onCommonScale(spots);
  const mean = oxidesOf(scaled).map((oxide): [string, Amount] => {
    const found = scaled.flatMap((spot) => (oxide in spot ? [spot[oxide]!] : []));
    const { amount, notes } = averageAmount(found, fraction);
    if (found.length < spots.length) notes.push(`measured in ${found.length} of ${spots.length} spots`);
    warnings.push(...notes.map((note) => `${oxide}: ${note}.`));
    return [oxide, amount];
  });
  const sum = mean.reduce((total, [, { value }]) => total + (value ?? 0), 0);
  const amounts = Object.fromEntries(mean.map(([oxide, amount]) => [oxide, scaleAmount(amount, 100 / sum)]));
  return { amounts, spots: spots.length, rawTotal, warnings };
}

const oxidesOf = (spots: readonly Amounts[]) =>
  [...new Set(spots.flatMap((spot) => Object.keys(spot)))].sort(byDisplayOrder);

function onCommonScale(spots: readonly Amounts[]): Amounts[] {
  const common = oxidesOf(spots).filter((oxide) => spots.every((spot) => spot[oxide]?.value));
  if (common.length === 0)
    throw new RequirementError(
      `a mean of spots needs an oxide above detection in all of them; the ${spots.length} spots share none`,
    );
  const sums = spots.map((spot) => common.reduce((sum, oxide) => sum + spot[oxide]!.value!, 0));
  return spots.map((spot, at) =>
    Object.fromEntries(
      Object.entries(spot).map(([oxide, amount]) => [oxide, scaleAmount(amount, sums[0]! / sums[at]!)]),
    ),
  );
}
