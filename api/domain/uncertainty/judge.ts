import { companionsOf, pooledRank } from '../placement/pooled-rank.ts';
import { type Surroundings, surroundingsOf } from '../placement/surroundings.ts';
import type { Verdict } from '../placement/types.ts';
import { rankAmong, verdictOf } from '../placement/verdict.ts';
import type { GroupModel, ReferenceModel } from '../reference/types.ts';
import { bisect } from '../slip/minimise.ts';
import { membershipOfNewcomer } from '../statistics/hotelling.ts';

/** How draws are judged against one group, as `placeSample` judges one composition. */
export interface Judge {
  /**
   * Of one draw, from its D², its squared distance off components (0 where there is none), and its coordinates in the
   * working scale, which are asked for only where the verdict rests on a rank.
   */
  readonly verdict: (d2: number, off2: number, coordinates: () => readonly number[]) => Verdict;
  /** Membership probability of a D²; null where the spread gives none. */
  readonly membership: ((d2: number) => number) | null;
}

/** Beyond any distance that a comparison meets. */
const FAR = 1e12;

/**
 * The judge of one group, as a sample sees it. With a probability the verdict is turned into limits once, so that a
 * draw costs two comparisons; by rank (under shrinkage) each draw is put among the members in its turn. Null where the
 * group gives no verdict.
 * @example
 * group = { id: 'g', n: 3, mean: [0, 0], deviation: null, spread: null, refusal: 'too few', memberIds: [], memberD2: null, memberOff: null }
 * judgeOf(group, { members: [] }, 'tile') // null
 */
export function judgeOf(group: GroupModel, model: ReferenceModel, id: string): Judge | null {
  const around = surroundingsOf(group, model, id);
  const { spread } = around;
  if (!spread) return null;
  return spread.method === 'sample' || spread.method === 'components'
    ? byLimits(around, (d2) => membershipOfNewcomer(d2, { n: around.n, p: spread.p }).probability)
    : byRank(around, { group, model, id });
}

function byLimits({ off: around }: Surroundings, membership: (d2: number) => number): Judge {
  const verdict = (d2: number, off: number) =>
    verdictOf({
      membership: membership(d2),
      typicality: null,
      ratio: null,
      off: around && {
        distance: off,
        furthestMember: Math.max(...around.members),
        rank: rankAmong(off, around.members),
      },
    });
  const limits = (while_: (verdict: Verdict) => boolean) => ({
    d2: end((u) => while_(verdict(Math.exp(u), 0))),
    off2: end((u) => while_(verdict(0, Math.exp(u / 2)))),
  });
  const inside = limits((v) => v === 'inside');
  const edge = limits((v) => v !== 'outside');
  return {
    membership,
    verdict: (d2, off2) => {
      if (d2 <= inside.d2 && off2 <= inside.off2) return 'inside';
      return d2 <= edge.d2 && off2 <= edge.off2 ? 'borderline' : 'outside';
    },
  };
}

/** Where a condition on the logarithm of a squared distance ends. */
function end(holds: (u: number) => boolean): number {
  return holds(Math.log(FAR))
    ? Number.POSITIVE_INFINITY
    : Math.exp(bisect((u) => !holds(u), Math.log(1 / FAR), Math.log(FAR)));
}

interface Seen {
  readonly group: GroupModel;
  readonly model: ReferenceModel;
  readonly id: string;
}

function byRank({ memberD2 }: Surroundings, { group, model, id }: Seen): Judge | null {
  // Shrinkage is on fixed axes, so the companions are the same for every draw.
  const companions = companionsOf({ id, coordinates: group.mean }, group, model);
  if (!companions || !pooledRank(group.mean, companions)) return null;
  const furthest = memberD2 && Math.max(...memberD2);
  return {
    membership: null,
    verdict: (d2, _, coordinates) =>
      verdictOf({
        membership: null,
        typicality: pooledRank(coordinates(), companions),
        ratio: furthest && Math.sqrt(d2 / furthest),
        off: null,
      }),
  };
}
