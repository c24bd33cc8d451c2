import {
  type DifferenceSplit,
  type PredictionInput,
  propagateSplit,
  sharedParts,
  splitAt,
  vectorOf,
} from './difference-split.ts';

/** measured − predicted = slip + evaporation + unexplained, wt%. */
export interface DifferenceRow {
  readonly oxide: string;
  readonly predicted: number;
  readonly measured: number;
  readonly difference: number;
  readonly slip: number;
  readonly evaporation: number;
  readonly unexplained: number;
  /** One standard deviation of each part of the difference. */
  readonly sigma: { readonly slip: number; readonly evaporation: number; readonly unexplained: number };
  /** |unexplained| over its σ; null where no σ is known. */
  readonly z: number | null;
}

export interface PredictionResult {
  readonly rows: readonly DifferenceRow[];
  /**
   * Share of the batch's lead oxide that left, 0–1, with one standard deviation, and whether it, or a surplus of lead,
   * can be told from none; null without lead in both.
   */
  readonly leadLost: {
    readonly share: number;
    readonly sigma: number;
    readonly told: boolean;
    readonly surplus: boolean;
  } | null;
  readonly words: readonly string[];
  readonly leftOut: readonly string[];
}

/**
 * Splits the difference between a tile's measured paint and its batch's prediction into slip, lead evaporated and
 * the unexplained rest, oxide by oxide, on the oxides that all have, closed to 100. The share of slip is taken as
 * given; the lead lost is what brings PbO over the other oxides together to the measured ratio (never below zero:
 * a surplus of lead stays unexplained). Standard deviations follow first-order propagation of every stated σ and of
 * the share's; that of the loss is not cut off at nothing. Throws on a share outside 0 to below 1 and when fewer than two oxides are shared.
 * @example
 * const p = (o) => Object.fromEntries(Object.entries(o).map(([k, value]) => [k, { value, sigma: 0.1 }]))
 * const seen = comparePrediction({ predicted: p({ PbO: 60, SiO2: 40 }), measured: p({ PbO: 50, SiO2: 50 }), slip: null })
 * seen.leadLost.share // 0.333333
 * seen.rows.map((r) => r.unexplained) // [0, 0]
 */
export function comparePrediction(input: PredictionInput): PredictionResult {
  const oxides = sharedParts(input);
  const start = vectorOf(input, oxides);
  const split = splitAt(start, oxides);
  const sigmas = propagateSplit(start, oxides);
  const rows = oxides.map((oxide, j): DifferenceRow => {
    const [slip, evaporation, unexplained] = [split.slip[j]!, split.evaporation[j]!, split.unexplained[j]!];
    const [predicted, measured] = [split.predicted[j]!, split.measured[j]!];
    const sigma = {
      slip: sigmas.slip[j]!,
      evaporation: sigmas.evaporation[j]!,
      unexplained: sigmas.unexplained[j]!,
    };
    const z = sigma.unexplained > 0 ? Math.abs(unexplained) / sigma.unexplained : null;
    return {
      oxide,
      predicted,
      measured,
      difference: measured - predicted,
      slip,
      evaporation,
      unexplained,
      sigma,
      z,
    };
  });
  const leadLost = leadLoss(oxides, split, sigmas.lost);
  return { rows, leadLost, words: wordsFor(rows, leadLost), leftOut: leftOut(input, oxides) };
}

function leadLoss(
  oxides: readonly string[],
  { lost, signed }: DifferenceSplit,
  sigma: number,
): PredictionResult['leadLost'] {
  if (!oxides.includes('PbO')) return null;
  return { share: lost, sigma, told: lost > 2 * sigma, surplus: sigma > 0 && signed < -2 * sigma };
}

function wordsFor(rows: readonly DifferenceRow[], lost: PredictionResult['leadLost']): string[] {
  const far = rows.filter((row) => row.z !== null && row.z > 2).map((row) => row.oxide);
  const words: string[] = [];
  if (lost) words.push(lossWords(lost));
  words.push(
    far.length > 0
      ? `Beyond twice its uncertainty, and unexplained: ${far.join(', ')}.`
      : 'Slip and lead lost account for the rest within twice its uncertainty.',
  );
  if (rows.every((row) => row.sigma.unexplained === 0))
    words.push('No uncertainty was stated, so no difference can be called real.');
  return words;
}

function lossWords({ share, sigma, told, surplus }: NonNullable<PredictionResult['leadLost']>): string {
  const percent = (x: number) => (100 * x).toFixed(1);
  if (surplus)
    return 'No lead is missing: more was read than predicted, and what is too much stays unexplained.';
  if (share === 0 && sigma === 0)
    return 'The figures show no lead missing, but without their uncertainty none can be ruled out.';
  if (!told)
    return `${percent(share)} ± ${percent(sigma)} % of the lead may have evaporated: this cannot be told from none.`;
  return `${percent(share)} ± ${percent(sigma)} % of the lead is missing, as if evaporated.`;
}

function leftOut({ predicted, measured }: PredictionInput, oxides: readonly string[]): string[] {
  return [...new Set([...Object.keys(predicted), ...Object.keys(measured)])].filter(
    (o) => !oxides.includes(o),
  );
}
