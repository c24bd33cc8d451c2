import type { GroupPlacement, Verdict } from '../../../api/domain/placement/types.ts';

/** The group that the sentence of a placement is about: the rule of `placementSentence`. */
export function spokenOf(groups: readonly GroupPlacement[]): GroupPlacement | undefined {
  const first = (verdict: Verdict) => groups.find((group) => group.verdict === verdict);
  return first('inside') ?? first('borderline') ?? first('outside') ?? groups[0];
}
