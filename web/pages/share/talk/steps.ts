import type { Comparison } from '../../../../api/contract/placement.ts';
import { placeSample } from '../../../../api/domain/placement/place.ts';
import { groupSpokenOf } from '../../../../api/domain/placement/sentence.ts';
import type { Placement } from '../../../../api/domain/placement/types.ts';
import { RequirementError } from '../../../../api/domain/requirement.ts';
import type { ProfileData } from '../../../../api/figures/profile-data.ts';
import { profileData } from '../../../../api/figures/profile-from-model.ts';
import type { ScoresData } from '../../../../api/figures/scores-data.ts';
import { scoresData } from '../../../../api/figures/scores-from-model.ts';
import { everything } from '../../../../api/figures/scores-layout.ts';

/** One picture of a talk: few words, large, and at most one figure. */
export interface Step {
  readonly id: 'title' | 'references' | 'slip in' | 'replica' | 'oxides' | 'verdict';
  readonly heading: string;
  readonly words: string;
  readonly scores?: ScoresData;
  readonly profile?: ProfileData;
}

/** A placement told step by step: the references, the replica, its slip drawn off, its oxides, the verdict. */
export function talkSteps(name: string, result: Comparison, replica: string | null): Step[] {
  const placed = result.placements.find(({ id }) => id === replica) ?? result.placements[0] ?? null;
  const { model, groups } = result;
  const sherds = `${model.members.length} sherds of ${groups.length === 1 ? 'one ware group' : `${groups.length} ware groups`}, ${model.parts.length} oxides`;
  const title: Step = { id: 'title', heading: name, words: sherds };
  const plane = planeOf(result, placed);
  const references = {
    ...{
      id: 'references' as const,
      heading: 'The sherds',
      words: 'Each mark is one sherd; near means alike.',
    },
    scores: plane([]),
  };
  return placed === null ? [title, references] : [title, references, ...ofReplica(result, placed, plane)];
}

type Plane = (placements: readonly Placement[]) => ScoresData;

/** The same part of the plane in every step, so that nothing moves but what is told. */
function planeOf(result: Comparison, placed: Placement | null): Plane {
  const slots = Object.fromEntries(result.groups.map(({ id, position }) => [id, position]));
  const scores = (placements: readonly Placement[]) =>
    scoresData(result.model, placements, {
      ...{ id: 'talk', components: [0, 1], level: 0.95, ellipses: true, loadings: false, slots },
      ...{ naming: 'chosen', chosen: placed?.id ?? null },
    });
  const all = placed ? [placed, ...(slipIn(result, placed) ?? [])] : [];
  const view = everything(scores(all));
  return (placements) => ({ ...scores(placements), view });
}

/** Where the replica lies as measured, slip still in; null where none was drawn off. */
function slipIn(result: Comparison, { id }: Placement): [Placement] | null {
  const sample = result.replicas.find((one) => one.id === id);
  if (sample === undefined || !result.slip?.some(({ specimen }) => specimen === id)) return null;
  try {
    return [placeSample(result.model, sample)];
  } catch (error) {
    if (error instanceof RequirementError) return null;
    throw error;
  }
}

function ofReplica(result: Comparison, placed: Placement, plane: Plane): Step[] {
  const before = slipIn(result, placed)?.[0];
  const drawn = result.slip?.find(({ specimen }) => specimen === placed.id);
  const now = plane([placed]);
  const way = before && [
    [before.scores[0] ?? 0, before.scores[1] ?? 0] as const,
    [now.replicas[0]!.x, now.replicas[0]!.y] as const,
  ];
  const scores = way ? { ...now, replicas: now.replicas.map((one) => ({ ...one, path: way })) } : now;
  const group = groupSpokenOf(placed.groups);
  const slot = result.groups.find(({ id }) => id === group?.group)?.position ?? 0;
  const profile =
    group &&
    profileData(result.model, [placed], {
      ...{ id: 'talk-profile', group: group.group, slot, basis: 'ratio', chosen: placed.id },
    });
  return [
    ...(before
      ? [
          {
            id: 'slip in' as const,
            heading: `${placed.label} as measured`,
            words: 'The slip beneath is still in.',
            scores: plane([before]),
          },
        ]
      : []),
    {
      id: 'replica',
      heading: drawn ? `${placed.label}, its slip drawn off` : placed.label,
      words: drawn
        ? `${Math.round(1000 * drawn.f) / 10} % of the ${drawn.slip} is taken out of the paint, by mass.`
        : 'The replica among the sherds.',
      scores,
    },
    ...(profile
      ? [
          {
            id: 'oxides' as const,
            heading: `What holds ${placed.label} off ${group.name}`,
            words: 'The oxides that weigh most come first.',
            profile,
          },
        ]
      : []),
    { id: 'verdict', heading: placed.label, words: placed.sentence },
  ];
}
