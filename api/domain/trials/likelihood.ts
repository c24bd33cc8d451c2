import { RequirementError } from '../requirement.ts';
import { dot } from '../slip/weighted.ts';
import { inverseAndLogDet } from './symmetric.ts';

/** A likelihood by its parts at given parameters. `information` is the expected one. */
export interface LikelihoodModel {
  readonly names: readonly string[];
  readonly start: readonly number[];
  /** −Infinity where the parameters are not allowed. */
  readonly logLik: (at: readonly number[]) => number;
  readonly score: (at: readonly number[]) => number[];
  readonly information: (at: readonly number[]) => number[][];
  /** Slope of ½ log det of the information, where it is known in closed form. */
  readonly penaltyScore?: (at: readonly number[]) => number[];
}

export interface FitOptions {
  /** Adds Jeffreys' penalty, ½ log det of the information. */
  readonly penalised: boolean;
  /** A parameter held at a value, by its place. */
  readonly held?: { readonly place: number; readonly value: number };
  readonly start?: readonly number[];
  /** Largest relative move of a parameter in the last round; 1e-10 by default. */
  readonly tolerance?: number;
}

export interface LikelihoodFit {
  readonly at: readonly number[];
  /** With the penalty, where there is one. */
  readonly logLik: number;
  /** Inverse of the information at the answer. */
  readonly covariance: readonly (readonly number[])[];
}

const STEP = 1e-3;
const ROUNDS = 200;
/** Rounds of plain scoring before the penalty's own curvature is worked out too. */
const SCORING_ROUNDS = 3;
/** Beyond this many parameters that curvature costs more rounds than it saves. */
const MOST_OBSERVED = 20;

function penalty(model: LikelihoodModel, at: readonly number[]): number {
  return 0.5 * inverseAndLogDet(model.information(at)).logDet;
}

/** Slope of the penalty by central differences of the fourth order. */
function numericPenaltyScore(model: LikelihoodModel, at: readonly number[]): number[] {
  return at.map((value, k) => {
    const h = STEP * Math.max(1, Math.abs(value));
    const moved = (steps: number) => penalty(model, at.with(k, value + steps * h));
    return (8 * (moved(1) - moved(-1)) - (moved(2) - moved(-2))) / (12 * h);
  });
}

function objective(model: LikelihoodModel, at: readonly number[], penalised: boolean): number {
  const l = model.logLik(at);
  if (!penalised || l === Number.NEGATIVE_INFINITY) return l;
  try {
    return l + penalty(model, at);
  } catch (error) {
    // The information vanishes to rounding far out: no better than not allowed.
    if (error instanceof RequirementError) return Number.NEGATIVE_INFINITY;
    throw error;
  }
}

function slope(model: LikelihoodModel, at: readonly number[], penalised: boolean): number[] {
  const score = model.score(at);
  if (!penalised) return score;
  const extra = model.penaltyScore?.(at) ?? numericPenaltyScore(model, at);
  return score.map((s, k) => s + extra[k]!);
}

/** What the step is divided by: the expected information; near the answer the observed curvature, penalty included. */
function curvature(model: LikelihoodModel, at: readonly number[], observed: boolean): number[][] {
  if (!observed) return model.information(at);
  const h = 1e-4;
  const columns = at.map((value, k) => {
    const up = slope(model, at.with(k, value + h), true);
    const down = slope(model, at.with(k, value - h), true);
    return up.map((u, i) => (down[i]! - u) / (2 * h));
  });
  return at.map((_, i) => at.map((__, j) => (columns[i]![j]! + columns[j]![i]!) / 2));
}

function nextStep(
  model: LikelihoodModel,
  at: readonly number[],
  options: FitOptions & { observed: boolean },
) {
  const score = slope(model, at, options.penalised);
  const place = options.held?.place;
  if (options.observed)
    try {
      return scoringStep(curvature(model, at, true), score, place);
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
