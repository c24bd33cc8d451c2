import { surroundingsOf } from '../placement/surroundings.ts';
import { rankAmong, verdictOf } from '../placement/verdict.ts';
import type { GroupModel, ReferenceModel } from '../reference/types.ts';
import { bisect } from '../slip/minimise.ts';
import { membershipOfNewcomer } from '../statistics/hotelling.ts';

/** Up to where a draw cannot be told from a group's members, and how D² reads as a probability. */
export interface InsideLimits {
  /** Largest D² and largest squared distance off the axes with the verdict `inside`. */
  readonly d2: number;
  readonly off2: number;
  /** Membership probability of a D²; null where the spread gives none. */
  readonly membership: ((d2: number) => number) | null;
}

/** Beyond any distance that a comparison meets. */
const FAR = 1e12;

/**
 * Turns a placement's verdict into limits, by asking it: the D² at which `inside` ends with nothing off the axes, and
 * the distance off them at which it ends with D² at nothing. Null where the group gives no verdict.
 * @example
 * group = { id: 'g', n: 3, mean: [0, 0], deviation: null, spread: null, refusal: 'too few', memberIds: [], memberD2: null, memberOff: null }
 * insideLimits(group, { members: [] }, 'tile') // null
 */
export function insideLimits(
  group: GroupModel,
  model: ReferenceModel,
  sampleId: string,
): InsideLimits | null {
  const { spread, n, memberD2, off: around } = surroundingsOf(group, model, sampleId);
  if (!spread) return null;
  const exact = spread.method === 'sample' || spread.method === 'components';
  const membership = exact ? (d2: number) => membershipOfNewcomer(d2, { n, p: spread.p }).probability : null;
  const verdict = (d2: number, off: number) =>
    verdictOf({
      membership: membership?.(d2) ?? null,
      typicality: memberD2 && rankAmong(d2, memberD2),
      ratio: memberD2 && Math.sqrt(d2 / Math.max(...memberD2)),
      off: around && {
        distance: off,
        furthestMember: Math.max(...around.members),
        rank: rankAmong(off, around.members),
      },
    });
  if (verdict(0, 0) === 'unknown') return null;
  const end = (inside: (x: number) => boolean) =>
    inside(Math.log(FAR))
      ? Number.POSITIVE_INFINITY
      : Math.exp(bisect((u) => !inside(u), Math.log(1 / FAR), Math.log(FAR)));
  return {
    d2: end((u) => verdict(Math.exp(u), 0) === 'inside'),
    off2: end((u) => verdict(0, Math.exp(u / 2)) === 'inside'),
    membership,
  };
}
