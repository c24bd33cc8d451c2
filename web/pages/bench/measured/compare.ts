import type { FiredBatch } from '../../../../api/domain/batch/batch.ts';
import type { StatedParts } from '../../../../api/domain/batch/difference-split.ts';
import { comparePrediction, type PredictionResult } from '../../../../api/domain/batch/prediction.ts';
import type { Amounts } from '../../../../api/domain/composition/types.ts';
import { fractionFromBatch } from '../../../../api/domain/slip/batch-fraction.ts';

/**
 * Prediction as figures with ±: weighing and analyses, and the range that sulfur, purity and roast leave open, taken
 * as even between its ends.
 */
export function statedOfBatch({ oxides }: FiredBatch): StatedParts {
  return Object.fromEntries(
    oxides.map(({ oxide, percent, sigma, low, high }) => [
      oxide,
      { value: percent, sigma: Math.hypot(sigma, (high - low) / Math.sqrt(12)) },
    ]),
  );
}

const FRACTION = 0.65;

/** Measured amounts as figures with ±; below detection is 0.65 of the limit, even between 0 and the limit. */
export function statedOfAmounts(amounts: Amounts): StatedParts {
  return Object.fromEntries(
    Object.entries(amounts).flatMap(([oxide, { value, limit, sigma }]) => {
      if (value !== null) return [[oxide, { value, sigma }]];
      return limit === null ? [] : [[oxide, { value: FRACTION * limit, sigma: limit / Math.sqrt(12) }]];
    }),
  );
}

/**
 * Oxides that a side is not known to hold are taken as absent from it, so that what the slip alone brings stays in
 * the comparison.
 */
function filled(side: StatedParts, measured: StatedParts): StatedParts {
  const absent = Object.keys(measured).filter((oxide) => !(oxide in side));
  return { ...side, ...Object.fromEntries(absent.map((oxide) => [oxide, { value: 0, sigma: null }])) };
}

export interface Sides {
  readonly fired: FiredBatch;
  readonly paint: Amounts;
  readonly slip: Amounts | null;
  readonly share: { readonly f: number; readonly sigma: number };
}

/** A tile's analysis beside its batch's prediction. Throws what `comparePrediction` requires. */
export function setBeside({ fired, paint, slip, share }: Sides): PredictionResult {
  const measured = statedOfAmounts(paint);
  return comparePrediction({
    predicted: filled(statedOfBatch(fired), measured),
    measured,
    slip: slip && { parts: filled(statedOfAmounts(slip), measured), share },
  });
}

/** What may leave in the fire says nothing of the slip. */
const LEAVES = ['PbO', 'SO3'];
const exact = { limit: null, sigmaBasis: null, resolution: null };

/**
 * The slip's share that this tile itself tells of, from every oxide but lead and sulfur. Throws what
 * `fractionFromBatch` requires.
 */
export function shareFromTile({
  fired,
  paint,
  slip,
}: Omit<Sides, 'share' | 'slip'> & { readonly slip: Amounts }) {
  const predicted = Object.fromEntries(
    Object.entries(statedOfBatch(fired)).map(([oxide, one]) => [oxide, { ...exact, ...one }]),
  );
  const oxides = Object.keys(predicted).filter(
    (oxide) => oxide in paint && oxide in slip && !LEAVES.includes(oxide),
  );
  const of = (label: string, amounts: Amounts) => ({ label, spots: 1, amounts });
  return fractionFromBatch(of('tile', paint), of('batch', predicted), { slip: of('slip', slip), oxides });
}
