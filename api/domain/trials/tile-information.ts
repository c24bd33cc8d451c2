import { weightedProducts } from './logistic-model.ts';

/** How tiles and zones tell of the effects. */
export interface TileModel {
  /** Standard deviation of the tiles' own level, log-odds. */
  readonly spread: number;
  /** Columns that only comparisons within tiles may tell of. */
  readonly within: readonly boolean[];
}

/**
 * Information of one tile's zones on the effects when the tile has a level of its own: what differs within the tile,
 * XᵀWX − (XᵀW1)(1ᵀWX)/1ᵀW1, and its mean row as one observation of variance spread² + 1/1ᵀW1, in which the columns
 * marked `within` do not count (as the analysis compares such factors within tiles only). With none marked the sum is
 * that of a random constant a tile (Breslow & Clayton 1993, doi 10.1080/01621459.1993.10594284). `weights` are
 * π(1 − π).
 *
 * @example
 * tileInformation([[1, -1], [1, 1]], [0.25, 0.25], { spread: 0, within: [false, false] }) // [[0.5, 0], [0, 0.5]]
 * tileInformation([[1, -1], [1, 1]], [0.25, 0.25], { spread: 1, within: [false, true] }) // [[0.333333, 0], [0, 0.5]]
 */
export function tileInformation(
  rows: readonly (readonly number[])[],
  weights: readonly number[],
  { spread, within }: TileModel,
): number[][] {
  const whole = weights.reduce((a, b) => a + b, 0);
  const mean = within.map((_, k) => rows.reduce((sum, row, i) => sum + weights[i]! * row[k]!, 0) / whole);
  const seen = mean.map((m, k) => (within[k] ? 0 : m));
  const between = 1 / (spread ** 2 + 1 / whole);
  return weightedProducts(rows, weights).map((line, i) =>
    line.map((v, j) => v - whole * mean[i]! * mean[j]! + between * seen[i]! * seen[j]!),
  );
}
