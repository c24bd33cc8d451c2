import type { GroupPlacement, Rank, Verdict } from './types.ts';

/** Membership probabilities below which a sample lies at the edge of a group, and outside it. */
const EDGE = 0.05;
const OUT = 0.01;
/** The same for a rank, which in a small group cannot be small: (1 + 0)/(n + 1). */
const RANK_EDGE = 0.1;
const RANK_OUT = 0.05;
/** Beyond all members by this factor is outside however few they are. Our own rule; see the simulation in scripts. */
const FAR = 2;
/** Off the components the edge begins here: beyond all members happens to a true member of a small group too often. */
const BEYOND = 1.25;

const ORDER: readonly Verdict[] = ['inside', 'borderline', 'outside'];
const worse = (a: Verdict, b: Verdict): Verdict => (ORDER.indexOf(a) >= ORDER.indexOf(b) ? a : b);

function byProbability(p: number): Verdict {
  if (p < OUT) return 'outside';
  return p < EDGE ? 'borderline' : 'inside';
}

/** `ratio`: distance over that of the furthest member; null where members have no distance of their own. */
function byRank(rank: Rank, ratio: number | null): Verdict {
  if (rank.value < RANK_OUT || (ratio !== null && ratio >= FAR)) return 'outside';
  return rank.atLeastAsFar === 0 || rank.value < RANK_EDGE ? 'borderline' : 'inside';
}

/** Off the components a sample clearly beyond every member is at the edge, and at twice the furthest outside. */
function byDistanceOff({ distance, furthestMember, rank }: NonNullable<GroupPlacement['off']>): Verdict {
  if (distance >= FAR * furthestMember) return 'outside';
  const beyond = rank.value <= RANK_OUT || distance >= BEYOND * furthestMember;
  return rank.atLeastAsFar === 0 && beyond ? 'borderline' : 'inside';
}

/** What a verdict is given on. */
export interface Evidence {
  readonly membership: number | null;
  readonly typicality: Rank | null;
  /** √D² over that of the furthest member left out; null without members' distances. */
  readonly ratio: number | null;
  readonly off: GroupPlacement['off'];
}

/**
 * What the numbers allow one to say of a sample and a group. By membership probability: below .01 outside, below .05
 * borderline, else inside, which means only that it cannot be told from the members. Without a probability, by rank
 * among the members: below .05, or beyond all of them at twice the distance of the furthest, outside; beyond all
 * of them, or below .1, borderline. Where only some components were compared, lying off them clearly beyond every
 * member counts too. `unknown` when there is neither probability nor rank. The levels are conventions.
 *
 * @example
 * verdictOf({ membership: 0.004, typicality: null, ratio: null, off: null }) // 'outside'
 * verdictOf({ membership: null, typicality: { value: 1 / 7, atLeastAsFar: 0, of: 6 }, ratio: 1.4, off: null }) // 'borderline'
 * verdictOf({ membership: null, typicality: null, ratio: null, off: null }) // 'unknown'
 */
export function verdictOf({ membership, typicality, ratio, off }: Evidence): Verdict {
  const main =
    membership !== null ? byProbability(membership) : typicality ? byRank(typicality, ratio) : 'unknown';
  return main === 'unknown' || !off ? main : worse(main, byDistanceOff(off));
}

/**
 * Place of a distance among those of a group's members: how many lie at least as far out.
 *
 * @example
 * rankAmong(3, [1, 2, 3, 4]) // { value: 0.6, atLeastAsFar: 2, of: 4 }
 */
export function rankAmong(distance: number, members: readonly number[]): Rank {
  const atLeastAsFar = members.reduce((count, m) => count + (m >= distance ? 1 : 0), 0);
  return { value: (1 + atLeastAsFar) / (members.length + 1), atLeastAsFar, of: members.length };
}
