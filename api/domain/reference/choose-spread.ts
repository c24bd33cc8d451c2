import { chiSquareQuantile } from '../statistics/distributions.ts';
import { newObservationLimit } from '../statistics/hotelling.ts';
import type { CovarianceChoice, GroupSpread } from './types.ts';

/** Fewest sherds for which any spread is worth having: below, shrinkage is singular or near it. */
export const FEWEST_SHERDS = 4;
/**
 * Fewest degrees of freedom n − p with which a membership probability is comfortable. With fewer, even a stranger far
 * out keeps a fair probability. In simulations (scripts/simulations/membership.ts) every direction given up costs
 * more power against an oxide that is off than a degree of freedom gained, down to about here.
 */
export const COMFORTABLE_DF = 6;

/** What a method is chosen from. */
export interface SpreadRequest {
  readonly n: number;
  /** Directions closed parts can move in: D − 1. */
  readonly p: number;
  /** Principal components of the references. */
  readonly components: number;
  /** Oxides below detection in every sherd of the group: their spread is that of the limit. */
  readonly undetected: readonly string[];
}

/** A method to fit, or why none can be. */
export type SpreadChoice =
  | { readonly method: GroupSpread['method']; readonly p: number; readonly explanation: string }
  | { readonly refusal: string };

/**
 * How many times as far out the 5 % limit for a new observation lies as it would if the group's mean and covariance
 * were known exactly: the square root of Hotelling's limit over χ²'s. Near 1 the group is well known; infinite when
 * n ≤ p.
 *
 * @example
 * reachOf(100, 8) // 1.069663
 * reachOf(10, 8) // 7.033237
 */
export function reachOf(n: number, p: number): number {
  if (n <= p) return Number.POSITIVE_INFINITY;
  return Math.sqrt(newObservationLimit({ n, p }, 0.05) / chiSquareQuantile(0.95, p));
}

const times = (reach: number) => `${reach.toFixed(1)} times`;

function sampleExplained({ n, p }: SpreadRequest): SpreadChoice {
  return {
    method: 'sample',
    p,
    explanation: `Sample covariance in all p = ${p} directions: n = ${n} sherds leave ${n - p} degrees of freedom, and the 5 % limit lies ${times(reachOf(n, p))} as far out as if the spread were known exactly.`,
  };
}

function componentsExplained({ n, p }: SpreadRequest, count: number, why: string): SpreadChoice {
  return {
    method: 'components',
    p: count,
    explanation: `First ${count} principal components of the references${why}: n = ${n} sherds leave ${n - count} degrees of freedom, and the 5 % limit lies ${times(reachOf(n, count))} as far out as if the spread were known exactly. What the other ${p - count} directions hold is shown as the distance off the components.`,
  };
}

function shrinkageExplained(
  { n, p }: SpreadRequest,
  method: 'ledoit-wolf' | 'oas',
  why: string,
): SpreadChoice {
  const name = method === 'oas' ? 'OAS' : 'Ledoit–Wolf';
  return {
    method,
    p,
    explanation: `Covariance shrunk towards a sphere (${name}) in all p = ${p} directions${why}: n = ${n} sherds. A shrunk covariance has no exact distribution, so distances are ranked among the members' and no membership probability is given.`,
  };
}

/**
 * The default by n and p: the most directions that leave six degrees of freedom. All of them, with the sample
 * covariance, when n − p ≥ 6 and every oxide is detected; else the first n − 6 components when those are two or
 * more (from 8 sherds on); else, for 4 to 7 sherds, shrinkage by OAS and rank only.
 */
function automatic(request: SpreadRequest): SpreadChoice {
  const { n, p, components, undetected } = request;
  if (undetected.length === 0 && n - p >= COMFORTABLE_DF) return sampleExplained(request);
  const count = Math.min(components, p - 1, n - COMFORTABLE_DF);
  const why =
    n - p >= COMFORTABLE_DF
      ? `, because ${undetected.join(', ')} is below detection in every sherd of the group`
      : `, because all p = ${p} directions would leave fewer than ${COMFORTABLE_DF} degrees of freedom`;
  if (count >= 2) return componentsExplained(request, count, why);
  return shrinkageExplained(request, 'oas', ', because the sherds are too few for two components');
}

function refused(what: string, request: SpreadRequest): SpreadChoice {
  const most = Math.min(request.n - 2, request.components);
  return { refusal: `${what}; work in at most ${most} components, or with shrinkage` };
}

function onSample(request: SpreadRequest): SpreadChoice {
  const { n, p, undetected } = request;
  if (n - 1 < p)
    return refused(
      `A sample covariance in p = ${p} directions needs n − 1 ≥ p; the group has n = ${n} sherds`,
      request,
    );
  if (undetected.length > 0)
    return refused(
      `A sample covariance needs every oxide to vary; ${undetected.join(', ')} is below detection in every sherd of the group`,
      request,
    );
  return sampleExplained(request);
}

function onComponents(request: SpreadRequest, count: number): SpreadChoice {
  if (count > request.components)
    return {
      refusal: `${count} components were asked for; the references have ${request.components}`,
    };
  if (request.n - 1 < count)
    return refused(
      `${count} components need n − 1 ≥ ${count}; the group has n = ${request.n} sherds`,
      request,
    );
  return componentsExplained(request, count, ', as chosen');
}

/**
 * Chooses how a group's spread is measured, or says why it cannot be. Needs four sherds for anything.
 *
 * @example
 * chooseSpread({ n: 40, p: 8, components: 8, undetected: [] }, { kind: 'auto' }).method // 'sample'
 * chooseSpread({ n: 10, p: 8, components: 8, undetected: [] }, { kind: 'auto' }).p // 4
 * chooseSpread({ n: 6, p: 8, components: 8, undetected: [] }, { kind: 'auto' }).method // 'oas'
 * chooseSpread({ n: 3, p: 8, components: 8, undetected: [] }, { kind: 'auto' }).refusal // 'A spread needs at least 4 sherds; the group has n = 3'
 */
export function chooseSpread(request: SpreadRequest, choice: CovarianceChoice): SpreadChoice {
  if (request.n < FEWEST_SHERDS)
    return { refusal: `A spread needs at least ${FEWEST_SHERDS} sherds; the group has n = ${request.n}` };
  switch (choice.kind) {
    case 'auto':
      return automatic(request);
    case 'sample':
      return onSample(request);
    case 'components':
      return onComponents(request, choice.count);
    case 'shrinkage':
      return shrinkageExplained(request, choice.target, ', as chosen');
  }
}
