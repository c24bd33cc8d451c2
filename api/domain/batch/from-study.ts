import { elementOf } from '../chemistry/oxides.ts';
import type { Amounts } from '../composition/types.ts';
import type { MaterialAnalysis } from './analysis-content.ts';
import type { FiredBatch } from './batch.ts';
import type { StatedParts } from './difference-split.ts';
import type { RecipeTarget } from './recipe-model.ts';

/**
 * Amounts of an analysis (wt%) with their standard deviations, as the bench uses them: below detection and totals
 * are left out.
 * @example
 * const amount = (value) => ({ value, limit: null, sigma: 0.1, sigmaBasis: 'stated', resolution: null })
 * statedAmounts({ PbO: amount(40), SnO2: amount(null) }) // { PbO: { value: 40, sigma: 0.1 } }
 */
export function statedAmounts(amounts: Amounts): StatedParts {
  return Object.fromEntries(
    Object.entries(amounts)
      .filter(([oxide, { value }]) => value !== null && elementOf(oxide) !== null)
      .map(([oxide, { value, sigma }]) => [oxide, { value: value!, sigma }]),
  );
}

/**
 * A sherd's or a group centre's amounts as a target for a batch, with its standard deviations where known.
 * @example
 * recipeTargetOf({ PbO: { value: 40, limit: null, sigma: 0.5, sigmaBasis: 'stated', resolution: null } }) // { parts: { PbO: 40 }, sigma: { PbO: 0.5 } }
 */
export function recipeTargetOf(amounts: Amounts): RecipeTarget {
  const { values: parts, sigma } = splitStated(statedAmounts(amounts));
  return { parts, sigma };
}

/**
 * An analysis already in the study (a clay, an ore) as a material's analysis, before closure, with its loss on
 * ignition (wt%) where one was reported.
 * @example
 * materialAnalysisOf({ SiO2: { value: 60, limit: null, sigma: null, sigmaBasis: null, resolution: null } }, 9).values // { SiO2: 60 }
 */
export function materialAnalysisOf(amounts: Amounts, lossOnIgnition: number | null): MaterialAnalysis {
  return { ...splitStated(statedAmounts(amounts)), lossOnIgnition };
}

function splitStated(stated: StatedParts) {
  const known = Object.entries(stated).filter(([, { sigma }]) => sigma !== null);
  return {
    values: Object.fromEntries(Object.entries(stated).map(([oxide, { value }]) => [oxide, value])),
    sigma: Object.fromEntries(known.map(([oxide, { sigma }]) => [oxide, sigma!])),
  };
}

/**
 * A fired batch as a prediction to set beside a measurement: wt% with one standard deviation, in which the range
 * left by sulfur, purity and roast counts as uniform (half-width / √3, GUM 4.3.7).
 * @example
 * predictedParts({ oxides: [{ oxide: 'PbO', percent: 50, low: 47, high: 53, sigma: 0 }] }).PbO.sigma // 1.73205
 */
export function predictedParts(fired: Pick<FiredBatch, 'oxides'>): StatedParts {
  return Object.fromEntries(
    fired.oxides.map(({ oxide, percent, low, high, sigma }) => [
      oxide,
      { value: percent, sigma: Math.hypot(sigma, (high - low) / 2 / Math.sqrt(3)) },
    ]),
  );
}
