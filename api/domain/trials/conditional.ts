import { bisect } from '../slip/minimise.ts';
import type { Arrangements } from './arrangements.ts';

/** An effect and how far it may lie from what was seen; null: unbounded on that side. */
export interface ConditionalEffect {
  readonly estimate: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** Twice the smaller tail of the permutation distribution. */
  readonly p: number;
  readonly smallestP: number;
}

const FAR = 1e4;

/** Shares of the totals when a step multiplies the odds by e^effect. */
function tilted({ totals, shares, observed }: Arrangements, effect: number): number[] {
  const exponents = totals.map((t) => effect * (t - observed));
  const top = Math.max(...exponents);
  const weights = shares.map((s, i) => s * Math.exp(exponents[i]! - top));
  const whole = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => w / whole);
}

/** Tail from the observed total on; the total itself counts `own` (1, or ½ for a mid-p). */
function tail(deals: Arrangements, effect: number, { side, own }: { side: 1 | -1; own: number }): number {
  return tilted(deals, effect).reduce((sum, share, i) => {
    const beyond = side * (deals.totals[i]! - deals.observed);
    return sum + (beyond > 0 ? share : beyond === 0 ? own * share : 0);
  }, 0);
}

/** Where a rising condition turns true, from 0 outwards. */
function crossing(holds: (effect: number) => boolean): number {
  let reach = 1;
  while (reach < FAR && holds(-reach) === holds(reach)) reach *= 2;
  return bisect(holds, -reach, reach);
}

/**
 * The effect of one step of a factor on the log-odds of one grade more, from the exact permutation distribution
 * tilted by e^(effect·total): the conditional maximum-likelihood estimate, and the effects that the observed total
 * does not refuse at (1 − level)/2 on either side, the observed total counted half (mid-p; Agresti & Gottard 2007,
 * doi 10.1016/j.csda.2006.10.017) or, with `own: 1`, whole. Unbounded where the total is the largest or smallest
 * possible. p is never halved: twice the smaller whole tail at no effect.
 *
 * @example
 * const deals = { totals: [0, 1, 2, 3], shares: [0.05, 0.45, 0.45, 0.05], observed: 2, deals: 20 }
 * conditionalEffect(deals, { level: 0.95, own: 1 }) // { estimate: 1.133169, low: -2.697053, high: 5.863624, p: 1, smallestP: 0.1 }
 * conditionalEffect({ ...deals, observed: 3 }, { level: 0.95, own: 1 }).high // null
 */
export function conditionalEffect(
  deals: Arrangements,
  { level, own }: { level: number; own: 0.5 | 1 },
): ConditionalEffect {
  const { totals, shares, observed } = deals;
  const [least, most] = [totals[0]!, totals.at(-1)!];
  const alpha = (1 - level) / 2;
  const meanAt = (effect: number) =>
    tilted(deals, effect).reduce((sum, share, i) => sum + share * totals[i]!, 0);
  const inside = observed > least && observed < most;
  const ends = Math.min(shares[0]!, shares.at(-1)!);
  return {
    estimate: inside ? crossing((effect) => meanAt(effect) > observed) : null,
    low: observed > least ? crossing((effect) => tail(deals, effect, { side: 1, own }) > alpha) : null,
    high: observed < most ? crossing((effect) => tail(deals, effect, { side: -1, own }) < alpha) : null,
    p: Math.min(1, 2 * Math.min(...([1, -1] as const).map((side) => tail(deals, 0, { side, own: 1 })))),
    smallestP: totals.length === 1 ? 1 : Math.min(1, 2 * ends),
  };
}
