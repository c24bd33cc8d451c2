import { RequirementError } from '../requirement.ts';
import type { FitOptions, LikelihoodModel } from './likelihood-model.ts';
import { jeffreysPenalty, nextStep } from './scoring-step.ts';
import { inverseAndLogDet } from './symmetric.ts';

export interface LikelihoodFit {
  readonly at: readonly number[];
  /** With the penalty, where there is one. */
  readonly logLik: number;
  /** Inverse of the information at the answer. */
  readonly covariance: readonly (readonly number[])[];
}

const ROUNDS = 200;
/** Rounds of plain scoring before the penalty's own curvature is worked out too. */
const SCORING_ROUNDS = 3;
/** Beyond this many parameters that curvature costs more rounds than it saves. */
const MOST_OBSERVED = 20;

function objective(model: LikelihoodModel, at: readonly number[], penalised: boolean): number {
  const l = model.logLik(at);
  if (!penalised || l === Number.NEGATIVE_INFINITY) return l;
  try {
    return l + jeffreysPenalty(model, at);
  } catch (error) {
    // The information vanishes to rounding far out: no better than not allowed.
    if (error instanceof RequirementError) return Number.NEGATIVE_INFINITY;
    throw error;
  }
}

/**
 * The parameters at which a likelihood, or a likelihood with Jeffreys' penalty (Firth 1993, doi
 * 10.1093/biomet/80.1.27), is greatest: Fisher scoring, steps halved until nothing is lost. Throws where the
 * information is singular (a column follows from others), or where no greatest value is reached (separation).
 *
 * @example
 * const one = { names: ['m'], start: [0], logLik: ([m]) => -((m - 3) ** 2), score: ([m]) => [-2 * (m - 3)], information: () => [[2]] }
 * fitLikelihood(one, { penalised: false }) // { at: [3], logLik: 0, covariance: [[0.5]] }
 */
export function fitLikelihood(model: LikelihoodModel, options: FitOptions): LikelihoodFit {
  const { penalised, held, tolerance = 1e-10 } = options;
  let at = [...(options.start ?? model.start)];
  if (held) at = at.with(held.place, held.value);
  let value = objective(model, at, penalised);
  for (let round = 0; round < ROUNDS; round++) {
    const observed = penalised && round >= SCORING_ROUNDS && at.length <= MOST_OBSERVED;
    const step = nextStep(model, at, { ...options, observed });
    const taken = halved(model, { at, value, step, penalised });
    const moved = Math.max(...step.map((s, k) => Math.abs(s) / Math.max(1, Math.abs(at[k]!))));
    ({ at, value } = taken);
    if (moved < tolerance || taken.stuck)
      return { at, logLik: value, covariance: inverseAndLogDet(model.information(at)).inverse };
  }
  throw new RequirementError(
    `a fit needs a greatest likelihood; after ${ROUNDS} rounds the parameters still move`,
  );
}

interface Move {
  readonly at: readonly number[];
  readonly value: number;
  readonly step: readonly number[];
  readonly penalised: boolean;
}

function halved(model: LikelihoodModel, { at, value, step, penalised }: Move) {
  // A step of more than 5 log-odds at once leaves the region where the quadratic means anything.
  const size = Math.max(...step.map(Math.abs));
  for (let scale = Math.min(1, 5 / size), tries = 0; tries < 40; scale /= 2, tries++) {
    const next = at.map((a, k) => a + scale * step[k]!);
    const found = objective(model, next, penalised);
    if (found >= value - 1e-13 * Math.abs(value)) return { at: next, value: found, stuck: false };
  }
  return { at: [...at], value, stuck: true };
}
