import { chiSquareQuantile, chiSquareUpperTail } from '../statistics/distributions.ts';
import { fitLikelihood, type LikelihoodFit } from './likelihood.ts';
import type { LikelihoodModel } from './likelihood-model.ts';

export interface ProfileLimits {
  readonly estimate: number;
  /** Square root of the information's inverse. */
  readonly se: number;
  /** null: the likelihood never falls far enough on that side. */
  readonly low: number | null;
  readonly high: number | null;
  /** Likelihood-ratio test of no effect, χ² on 1. */
  readonly chiSquare: number;
  readonly p: number;
}

export interface ProfileRequest {
  readonly place: number;
  readonly penalised: boolean;
  readonly level: number;
}

/** No log-odds of a potter's factor is read beyond this many standard errors. */
const FURTHEST = 64;

/**
 * Limits of one parameter where twice the (penalised) log-likelihood, greatest over the others, has fallen by the χ²
 * quantile on 1 degree of freedom; and the likelihood-ratio test of 0. With the penalty, the whole information counts
 * also where the parameter is held (Heinze & Schemper 2002, doi 10.1002/sim.1047). Throws as `fitLikelihood`.
 *
 * @example
 * const model = logisticModel({ names: ['(constant)'], rows: [[1], [1], [1], [1]] }, [1, 1, 1, 0])
 * profileLimits(model, fitLikelihood(model, { penalised: true }), { place: 0, penalised: true, level: 0.95 }) // { estimate: 0.847298, low: -0.957239, high: 3.181023 }
 */
export function profileLimits(
  model: LikelihoodModel,
  fit: LikelihoodFit,
  { place, penalised, level }: ProfileRequest,
): ProfileLimits {
  const estimate = fit.at[place]!;
  const se = Math.sqrt(fit.covariance[place]![place]!);
  let start = fit.at;
  const fall = (value: number) => {
    const held = fitLikelihood(model, { penalised, held: { place, value }, start, tolerance: 1e-6 });
    start = held.at;
    return Math.max(0, 2 * (fit.logLik - held.logLik));
  };
  const limit = chiSquareQuantile(level, 1);
  const end = (side: 1 | -1) => {
    start = fit.at;
    for (let reach = 1; reach <= FURTHEST; reach *= 2) {
      const inside = reach === 1 ? estimate : estimate + (side * se * reach) / 2;
      const outside = estimate + side * se * reach;
      if (fall(outside) > limit) return crossing((v) => fall(v) - limit, inside, outside);
    }
    return null;
  };
  const [low, high] = [end(-1), end(1)];
  start = fit.at;
  const chiSquare = fall(0);
  return { estimate, se, low, high, chiSquare, p: chiSquareUpperTail(chiSquare, 1) };
}

/** Root between two points by the Illinois variant of false position: each fit is dear. */
function crossing(f: (x: number) => number, from: number, to: number): number {
  let [a, b] = [from, to];
  let [fa, fb] = [f(a), f(b)];
  for (let i = 0; i < 40 && Math.abs(b - a) > 1e-10 * Math.max(1, Math.abs(b)); i++) {
    const x: number = b - (fb * (b - a)) / (fb - fa);
    const fx = f(x);
    if (Math.abs(fx) < 1e-10) return x;
    if (fx * fb < 0) [a, fa] = [b, fb];
    else fa /= 2;
    [b, fb] = [x, fx];
  }
  return b;
}
