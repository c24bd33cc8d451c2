import { RequirementError } from '../requirement.ts';
import { betaUpperTail, fQuantile, fUpperTail } from './distributions.ts';

/** Size of the group and number of axes in which D² was taken. */
export interface Size {
  readonly n: number;
  readonly p: number;
}

/** A membership probability and the degrees of freedom of its F. */
export interface Membership {
  readonly probability: number;
  readonly df: readonly [number, number];
}

function needRoom({ n, p }: Size): void {
  if (!(p >= 1 && n > p))
    throw new RequirementError(`a membership probability needs n > p; found n = ${n}, p = ${p}`);
}

/**
 * Chance that a member of a normal group would lie at least as far out as an observation that took no part in
 * the group's n-row mean and sample covariance: Hotelling's T² for a new observation,
 * F = D²·n(n−p)/(p(n−1)(n+1)) with p and n − p degrees of freedom (NIST/SEMATECH e-Handbook 6.5.4.3).
 * Throws when n ≤ p.
 *
 * @example
 * membershipOfNewcomer(14.8667, { n: 5, p: 3 }).probability // 0.34276
 * membershipOfNewcomer(14.8667, { n: 5, p: 3 }).df // [3, 2]
 * membershipOfNewcomer(1, { n: 8, p: 8 }) // throws needs n > p; found n = 8, p = 8
 */
export function membershipOfNewcomer(d2: number, size: Size): Membership {
  needRoom(size);
  const { n, p } = size;
  const f = (d2 * n * (n - p)) / (p * (n - 1) * (n + 1));
  return { probability: fUpperTail(f, p, n - p), df: [p, n - p] };
}

/**
 * The same chance for a member of the group, from its leave-one-out D²: it is a newcomer to the n − 1 others.
 * Throws when n − 1 ≤ p.
 *
 * @example
 * membershipOfMember(74.11958, { n: 21, p: 8 }).probability // 0.00419959
 */
export function membershipOfMember(leaveOneOut: number, { n, p }: Size): Membership {
  return membershipOfNewcomer(leaveOneOut, { n: n - 1, p });
}

/**
 * The same chance for a member from its in-sample D², by the beta distribution of d·n/(n−1)² with p/2 and
 * (n−p−1)/2; equal to `membershipOfMember` on the leave-one-out D². Throws when n − 1 ≤ p.
 *
 * @example
 * membershipInSample(15.008056, { n: 21, p: 8 }) // 0.00419959
 */
export function membershipInSample(d2: number, { n, p }: Size): number {
  needRoom({ n: n - 1, p });
  return betaUpperTail((d2 * n) / (n - 1) ** 2, p / 2, (n - p - 1) / 2);
}

/**
 * D² beyond which a new observation has a membership probability below alpha:
 * p(n+1)(n−1)/(n²−np)·F(1−alpha; p, n−p) (NIST/SEMATECH e-Handbook 6.5.4.3). Throws when n ≤ p.
 *
 * @example
 * newObservationLimit({ n: 20, p: 2 }, 0.05) // 7.8793
 * newObservationLimit({ n: 25, p: 5 }, 0.05) // 16.916
 */
export function newObservationLimit(size: Size, alpha: number): number {
  needRoom(size);
  const { n, p } = size;
  return ((p * (n + 1) * (n - 1)) / (n * n - n * p)) * fQuantile(1 - alpha, p, n - p);
}
