import { RequirementError } from '../requirement.ts';
import { dot } from '../slip/weighted.ts';
import type { LikelihoodModel } from './likelihood-model.ts';
import type { Design } from './logistic-model.ts';
import { type CutRow, cutInformation, cutRow, penaltySlopes } from './ordinal-row.ts';
import { inverseAndLogDet } from './symmetric.ts';

/**
 * Proportional odds for ordered grades 0 … K − 1: log odds of grade ≤ j = thresholdⱼ − row·effects (McCullagh 1980,
 * doi 10.1111/j.2517-6161.1980.tb01109.x), as a likelihood. Parameters: the K − 1 thresholds, then one effect a
 * column; a positive effect favours higher grades. The design has no column of ones. Throws when a grade between is
 * never seen, since its threshold would not exist.
 *
 * @example
 * const model = ordinalModel({ names: ['thick'], rows: [[0], [0], [0], [1], [1], [1]] }, [0, 0, 1, 0, 1, 1])
 * fitLikelihood(model, { penalised: false }).at // [0.693147, 1.386294]
 * ordinalModel({ names: ['thick'], rows: [[0], [1]] }, [0, 2]) // throws needs every grade seen; grade 1 is not
 */
export function ordinalModel({ names, rows }: Design, grades: readonly number[]): LikelihoodModel {
  const counts = countGrades(grades);
  const top = counts.length - 1;
  const cuts = (at: readonly number[]) =>
    rows.map((row) => cutRow(at.slice(0, top), dot(row, at.slice(top))));
  const information = (at: readonly number[]) => spread(rows, cuts(at).map(cutInformation));
  return {
    names: [...Array.from({ length: top }, (_, j) => `threshold ${j + 1}`), ...names],
    start: [...startingThresholds(counts), ...names.map(() => 0)],
    logLik: (at) =>
      inOrder(at.slice(0, top))
        ? cuts(at).reduce((sum, cut, i) => sum + Math.log(cut.chances[grades[i]!]!), 0)
        : Number.NEGATIVE_INFINITY,
    score: (at) => {
      const slopes = cuts(at).map((cut, i) => scoreOf(cut, grades[i]!));
      return gather(rows, slopes);
    },
    information,
    penaltyScore: (at) => {
      const { inverse } = inverseAndLogDet(information(at));
      const slopes = cuts(at).map((cut, i) => penaltySlopes(cut, cutCovariance(rows[i]!, inverse, top)));
      return gather(rows, slopes);
    },
  };
}

function countGrades(grades: readonly number[]): number[] {
  const top = Math.max(...grades);
  const counts = Array.from({ length: top + 1 }, (_, g) => grades.filter((y) => y === g).length);
  const empty = counts.indexOf(0);
  if (empty >= 0)
    throw new RequirementError(`proportional odds needs every grade seen; grade ${empty} is not`);
  if (top < 1) throw new RequirementError('proportional odds needs two grades or more; found one');
  return counts;
}

function startingThresholds(counts: readonly number[]): number[] {
  const n = counts.reduce((a, b) => a + b, 0);
  let below = 0;
  return counts.slice(0, -1).map((c) => {
    below += c;
    return Math.log((below + 0.5) / (n - below + 0.5));
  });
}

const inOrder = (thresholds: readonly number[]) =>
  thresholds.every((threshold, j) => j === 0 || threshold > thresholds[j - 1]!);

/** Slope of one row's log-likelihood in its cuts. */
function scoreOf({ chances, slopes }: CutRow, grade: number): number[] {
  return slopes.map((slope, j) => (j === grade ? slope : j === grade - 1 ? -slope : 0) / chances[grade]!);
}

/** From slopes in the cuts of each row to slopes in the parameters: a cut is threshold − row·effects. */
function gather(rows: Design['rows'], slopes: readonly (readonly number[])[]): number[] {
  const thresholds = slopes[0]!.map((_, j) => slopes.reduce((sum, s) => sum + s[j]!, 0));
  const pulls = slopes.map((s) => -s.reduce((a, b) => a + b, 0));
  const effects = rows[0]!.map((_, k) => rows.reduce((sum, row, i) => sum + row[k]! * pulls[i]!, 0));
  return [...thresholds, ...effects];
}

/** Information in the parameters from the information in the cuts of each row. */
function spread(rows: Design['rows'], blocks: readonly (readonly (readonly number[])[])[]): number[][] {
  const top = blocks[0]!.length;
  const size = top + rows[0]!.length;
  const total = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  rows.forEach((row, i) => {
    const block = blocks[i]!;
    const sums = block.map((b) => b.reduce((x, y) => x + y, 0));
    const whole = sums.reduce((x, y) => x + y, 0);
    for (let a = 0; a < top; a++) {
      for (let b = 0; b < top; b++) total[a]![b]! += block[a]![b]!;
      row.forEach((v, k) => {
        total[a]![top + k]! -= sums[a]! * v;
        total[top + k]![a]! -= sums[a]! * v;
      });
    }
    row.forEach((v, k) => {
      if (v !== 0) for (let l = 0; l < row.length; l++) total[top + k]![top + l]! += whole * v * row[l]!;
    });
  });
  return total;
}

/** Covariance of a row's cuts under a covariance of the parameters. */
function cutCovariance(
  row: readonly number[],
  covariance: readonly (readonly number[])[],
  top: number,
): number[][] {
  const across = covariance.map((line) => dot(row, line.slice(top)));
  const own = dot(row, across.slice(top));
  return Array.from({ length: top }, (_, a) =>
    Array.from({ length: top }, (_, b) => covariance[a]![b]! - across[a]! - across[b]! + own),
  );
}
