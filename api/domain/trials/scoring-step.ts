import { RequirementError } from '../requirement.ts';
import { dot } from '../slip/weighted.ts';
import type { FitOptions, LikelihoodModel } from './likelihood-model.ts';
import { inverseAndLogDet } from './symmetric.ts';

const STEP = 1e-3;

/**
 * Jeffreys' penalty, ½ log det of the information. Throws as `cholesky` where that is singular.
 *
 * @example
 * jeffreysPenalty({ information: () => [[4]] }, [0]) // 0.693147
 */
export function jeffreysPenalty(model: Pick<LikelihoodModel, 'information'>, at: readonly number[]): number {
  return 0.5 * inverseAndLogDet(model.information(at)).logDet;
}

/** Slope of the penalty by central differences of the fourth order. */
function numericPenaltyScore(model: LikelihoodModel, at: readonly number[]): number[] {
  return at.map((value, k) => {
    const h = STEP * Math.max(1, Math.abs(value));
    const moved = (steps: number) => jeffreysPenalty(model, at.with(k, value + steps * h));
    return (8 * (moved(1) - moved(-1)) - (moved(2) - moved(-2))) / (12 * h);
  });
}

function slope(model: LikelihoodModel, at: readonly number[], penalised: boolean): number[] {
  const score = model.score(at);
  if (!penalised) return score;
  const extra = model.penaltyScore?.(at) ?? numericPenaltyScore(model, at);
  return score.map((s, k) => s + extra[k]!);
}

/** Observed curvature of the penalised likelihood, by central differences of its slope. */
function curvature(model: LikelihoodModel, at: readonly number[]): number[][] {
  const h = 1e-4;
  const columns = at.map((value, k) => {
    const up = slope(model, at.with(k, value + h), true);
    const down = slope(model, at.with(k, value - h), true);
    return up.map((u, i) => (down[i]! - u) / (2 * h));
  });
  return at.map((_, i) => at.map((__, j) => (columns[i]![j]! + columns[j]![i]!) / 2));
}

/**
 * The next move of a fit: slope over curvature for the parameters that are free; with `observed` the curvature of the
 * penalised likelihood itself where it is rounded there, else the expected information. Throws as `cholesky`.
 *
 * @example
 * const one = { score: ([m]) => [-2 * (m - 3)], information: () => [[2]] }
 * nextStep(one, [1], { penalised: false, observed: false }) // [2]
 */
export function nextStep(
  model: LikelihoodModel,
  at: readonly number[],
  options: FitOptions & { observed: boolean },
) {
  const score = slope(model, at, options.penalised);
  const place = options.held?.place;
  if (options.observed)
    try {
      return scoringStep(curvature(model, at), score, place);
    } catch (error) {
      // Not yet where the likelihood is rounded: plain scoring still climbs.
      if (!(error instanceof RequirementError)) throw error;
    }
  return scoringStep(model.information(at), score, place);
}

/** One step of Fisher scoring over the parameters that are free. */
function scoringStep(information: readonly (readonly number[])[], score: readonly number[], held?: number) {
  const free = score.map((_, k) => k).filter((k) => k !== held);
  const step = new Array<number>(score.length).fill(0);
  if (free.length === 0) return step;
  const { inverse } = inverseAndLogDet(free.map((i) => free.map((j) => information[i]![j]!)));
  free.forEach((k, i) => {
    step[k] = dot(
      inverse[i]!,
      free.map((j) => score[j]!),
    );
  });
  return step;
}
