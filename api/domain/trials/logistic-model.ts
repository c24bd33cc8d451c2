import { RequirementError } from '../requirement.ts';
import { dot } from '../slip/weighted.ts';
import type { LikelihoodModel } from './likelihood-model.ts';
import { inverseAndLogDet } from './symmetric.ts';

/** A table for regression: one row a zone; the columns are named. */
export interface Design {
  readonly names: readonly string[];
  readonly rows: readonly (readonly number[])[];
}

/**
 * 1/(1 + e^−x), without overflow.
 *
 * @example
 * logistic(0) // 0.5
 */
export function logistic(x: number): number {
  return x >= 0 ? 1 / (1 + Math.exp(-x)) : Math.exp(x) / (1 + Math.exp(x));
}

/** log(1 + e^x) without overflow. */
const softPlus = (x: number) => Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));

/**
 * Binary logistic regression, log(π/(1 − π)) = row·parameters, as a likelihood: `yes` is 1 or 0 a row. With Jeffreys'
 * penalty it is Firth's (doi 10.1093/biomet/80.1.27; Heinze & Schemper 2002, doi 10.1002/sim.1047). The design holds
 * its own column of ones. Throws when rows and outcomes differ in number, or an outcome is neither 0 nor 1.
 *
 * @example
 * const model = logisticModel({ names: ['(constant)'], rows: [[1], [1], [1], [1]] }, [1, 1, 1, 0])
 * fitLikelihood(model, { penalised: false }).at // [1.098612]
 * fitLikelihood(model, { penalised: true }).at // [0.847298]
 * logisticModel({ names: ['a'], rows: [[1]] }, [2]) // throws needs outcomes of 0 or 1; row 1 holds 2
 */
export function logisticModel({ names, rows }: Design, yes: readonly number[]): LikelihoodModel {
  checkOutcome(rows, yes);
  const chances = (at: readonly number[]) => rows.map((row) => logistic(dot(row, at)));
  const information = (at: readonly number[]) =>
    weightedProducts(
      rows,
      chances(at).map((pi) => pi * (1 - pi)),
    );
  const combine = (weights: readonly number[]) =>
    names.map((_, k) => weights.reduce((sum, w, i) => sum + w * rows[i]![k]!, 0));
  return {
    names,
    start: names.map(() => 0),
    logLik: (at) => -rows.reduce((sum, row, i) => sum + softPlus((1 - 2 * yes[i]!) * dot(row, at)), 0),
    score: (at) => combine(chances(at).map((pi, i) => yes[i]! - pi)),
    information,
    penaltyScore: (at) => {
      const { inverse } = inverseAndLogDet(information(at));
      return combine(chances(at).map((pi, i) => pi * (1 - pi) * form(rows[i]!, inverse) * (0.5 - pi)));
    },
  };
}

function checkOutcome(rows: Design['rows'], yes: readonly number[]): void {
  if (rows.length !== yes.length)
    throw new RequirementError(
      `logistic regression needs one outcome a row; found ${yes.length} for ${rows.length} rows`,
    );
  const odd = yes.findIndex((y) => y !== 0 && y !== 1);
  if (odd >= 0)
    throw new RequirementError(
      `logistic regression needs outcomes of 0 or 1; row ${odd + 1} holds ${yes[odd]}`,
    );
}

/**
 * Xᵀ·diag(w)·X.
 *
 * @example
 * weightedProducts([[1, 2], [1, 4]], [1, 0.5]) // [[1.5, 4], [4, 12]]
 */
export function weightedProducts(
  rows: readonly (readonly number[])[],
  weights: readonly number[],
): number[][] {
  const p = rows[0]?.length ?? 0;
  const out = Array.from({ length: p }, () => new Array<number>(p).fill(0));
  rows.forEach((row, r) => {
    for (let i = 0; i < p; i++) {
      const scaled = weights[r]! * row[i]!;
      if (scaled !== 0) for (let j = 0; j < p; j++) out[i]![j]! += scaled * row[j]!;
    }
  });
  return out;
}

/**
 * The quadratic form vᵀ·M·v.
 *
 * @example
 * form([1, 2], [[2, 0], [0, 3]]) // 14
 */
export function form(v: readonly number[], matrix: readonly (readonly number[])[]): number {
  return v.reduce((sum, a, i) => (a === 0 ? sum : sum + a * dot(matrix[i]!, v)), 0);
}
