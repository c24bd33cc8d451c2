import { logistic } from './logistic-model.ts';

/** One row of a cumulative model: the chance of each grade, and the slopes of the cumulative chances at the cuts. */
export interface CutRow {
  readonly chances: readonly number[];
  /** g = F(1 − F) at each cut. */
  readonly slopes: readonly number[];
  /** Slope of g at each cut. */
  readonly bends: readonly number[];
}

const LEAST = 1e-300;

/**
 * Chances of the grades between cuts at thresholdⱼ − push on the log-odds scale, from the nearer end of each so that
 * small ones keep their digits.
 *
 * @example
 * cutRow([-1, 1], 0).chances // [0.268941, 0.462117, 0.268941]
 */
export function cutRow(thresholds: readonly number[], push: number): CutRow {
  const cuts = [Number.NEGATIVE_INFINITY, ...thresholds.map((t) => t - push), Number.POSITIVE_INFINITY];
  const chances = cuts.slice(1).map((upper, j) => {
    const lower = cuts[j]!;
    const chance = lower > 0 ? logistic(-lower) - logistic(-upper) : logistic(upper) - logistic(lower);
    return Math.max(chance, LEAST);
  });
  const slopes = cuts.slice(1, -1).map((c) => logistic(c) * logistic(-c));
  return { chances, slopes, bends: slopes.map((g, j) => g * (1 - 2 * logistic(cuts[j + 1]!))) };
}

/**
 * Expected information of one row in its cuts: tridiagonal, gₐ²(1/πₐ + 1/πₐ₊₁) and −gₐgₐ₊₁/πₐ₊₁.
 *
 * @example
 * cutInformation(cutRow([0], 0)) // [[0.25]]
 */
export function cutInformation({ chances, slopes }: CutRow): number[][] {
  return slopes.map((g, a) =>
    slopes.map((other, b) => {
      if (a === b) return g * g * (1 / chances[a]! + 1 / chances[a + 1]!);
      return Math.abs(a - b) === 1 ? (-g * other) / chances[Math.max(a, b)]! : 0;
    }),
  );
}

/**
 * Slopes of ½ log det of the whole information in one row's cuts: ½ Σ Vₐᵦ·∂Mₐᵦ/∂cut, with V the covariance of the
 * cuts and M the row's information in them.
 *
 * @example
 * penaltySlopes(cutRow([0.5], 0), [[1]]) // [-0.0287794]
 */
export function penaltySlopes(
  { chances, slopes, bends }: CutRow,
  covariance: readonly (readonly number[])[],
): number[] {
  const out = slopes.map(() => 0);
  slopes.forEach((g, a) => {
    const [below, above] = [chances[a]!, chances[a + 1]!];
    const own = covariance[a]![a]! / 2;
    out[a]! +=
      own * (2 * g * bends[a]! * (1 / below + 1 / above) + g ** 3 * (1 / above ** 2 - 1 / below ** 2));
    if (a > 0) out[a - 1]! += (own * g * g * slopes[a - 1]!) / below ** 2;
    const next = slopes[a + 1];
    if (next === undefined) return;
    out[a + 1]! -= (own * g * g * next) / above ** 2;
    const cross = covariance[a]![a + 1]!;
    out[a]! -= cross * ((bends[a]! * next) / above + (g * g * next) / above ** 2);
    out[a + 1]! += cross * ((g * next * next) / above ** 2 - (g * bends[a + 1]!) / above);
  });
  return out;
}
