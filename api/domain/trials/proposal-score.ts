import { normalQuantile } from '../statistics/distributions.ts';
import { addMatrices, type Belief, type OptionTerm, weightsAt } from './belief.ts';
import { inverseAndLogDet } from './symmetric.ts';
import { tileInformation } from './tile-information.ts';
import type { Shrinkage } from './types.ts';

export type Rows = readonly (readonly number[])[];

/**
 * How much one more tile of given rows would tell: the mean log determinant of the information on the effects at
 * `places`, over the draws of a belief. No rows: what is known now.
 *
 * @example
 * const belief = { draws: [[0, 0]], information: [[[1, 0], [0, 1]]], model: { spread: 1, within: [false, true] } }
 * const score = proposalScore(belief, [1])
 * score([]) // 0
 * score([[1, -2], [1, 2]]) // 1.098612
 */
export function proposalScore(belief: Belief, places: readonly number[]): (rows: Rows) => number {
  return (rows) => {
    const each = belief.draws.map((_, d) => {
      const { inverse } = inverseAndLogDet(informationWith(belief, d, rows));
      return -inverseAndLogDet(places.map((i) => places.map((j) => inverse[i]![j]!))).logDet;
    });
    return each.reduce((a, b) => a + b, 0) / each.length;
  };
}

function informationWith({ draws, information, model }: Belief, d: number, rows: Rows) {
  const now = information[d]!;
  if (rows.length === 0) return now;
  return addMatrices(now, tileInformation(rows, weightsAt(rows, draws[d]!), model));
}

/**
 * Widths of the intervals of each effect by the model: now, and as expected after one more tile (the mean over the
 * draws of how much each narrows).
 *
 * @example
 * const belief = { draws: [[0, 0]], information: [[[1, 0], [0, 1]]], model: { spread: 1, within: [false, true] } }
 * expectedShrinkage(belief, [{ factor: { name: 'coats' }, contrast: 'per coat' }], { rows: [[1, -2], [1, 2]], level: 0.95 })[0] // { factor: 'coats', now: 3.919928, expected: 2.263171 }
 */
export function expectedShrinkage(
  belief: Belief,
  terms: readonly Pick<OptionTerm, 'factor' | 'contrast'>[],
  { rows, level }: { rows: Rows; level: number },
): Shrinkage[] {
  const z = 2 * normalQuantile(1 - (1 - level) / 2);
  const widths = (d: number, more: Rows) => {
    const { inverse } = inverseAndLogDet(informationWith(belief, d, more));
    return terms.map((_, k) => z * Math.sqrt(inverse[k + 1]![k + 1]!));
  };
  const now = widths(0, []);
  const ratios = belief.draws.map((_, d) => {
    const before = widths(d, []);
    return widths(d, rows).map((after, k) => after / before[k]!);
  });
  return terms.map(({ factor, contrast }, k) => ({
    factor: factor.name,
    contrast,
    now: now[k]!,
    expected: (now[k]! * ratios.reduce((sum, r) => sum + r[k]!, 0)) / ratios.length,
  }));
}
