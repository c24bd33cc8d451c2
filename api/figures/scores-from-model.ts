import type { Placement } from '../domain/placement/types.ts';
import { FEWEST_SHERDS } from '../domain/reference/choose-spread.ts';
import { confidenceEllipse } from '../domain/reference/ellipse.ts';
import type { GroupModel, ReferenceModel } from '../domain/reference/types.ts';
import type { ScoresData, ScoresEllipse, ScoresGroup, ScoresPoint } from './scores-data.ts';

export interface ScoresChoices {
  readonly id: string;
  readonly components: readonly [number, number];
  readonly level: number;
  readonly ellipses: boolean;
  readonly loadings: boolean;
  readonly naming: ScoresData['naming'];
  /** Replica drawn foremost; null for none. */
  readonly chosen: string | null;
  /** Place of each ware group in the study's order, by id. */
  readonly slots: Readonly<Record<string, number>>;
}

/** What the scores plot draws, from a fitted model and the replicas placed in it. */
export function scoresData(
  model: ReferenceModel,
  placements: readonly Placement[],
  choices: ScoresChoices,
): ScoresData {
  const [i, j] = choices.components;
  return {
    id: choices.id,
    title: `Scores of ${model.members.length} reference sherds and ${placements.length} replicas`,
    components: choices.components,
    explained: [model.pca.explained[i] ?? 0, model.pca.explained[j] ?? 0],
    groups: groupsOf(model, choices),
    replicas: placements.map(({ id, label, scores }) => ({
      ...{ id, label, x: scores[i] ?? 0, y: scores[j] ?? 0 },
      chosen: id === choices.chosen,
    })),
    loadings: choices.loadings
      ? model.parts.map((part, k) => ({
          part,
          x: model.pca.loadings[i]?.[k] ?? 0,
          y: model.pca.loadings[j]?.[k] ?? 0,
        }))
      : null,
    level: choices.level,
    naming: choices.naming,
    view: null,
  };
}

function groupsOf(model: ReferenceModel, choices: ScoresChoices): ScoresGroup[] {
  const [i, j] = choices.components;
  const points = new Map<string, ScoresPoint[]>(model.groups.map(({ id }) => [id, []]));
  for (const { id, label, group, scores } of model.members)
    points.get(group)?.push({ id, label, x: scores[i] ?? 0, y: scores[j] ?? 0 });
  return model.groups.map((group, at) => ({
    id: group.id,
    name: group.name,
    slot: choices.slots[group.id] ?? at,
    n: group.n,
    points: points.get(group.id)!,
    ellipse: choices.ellipses ? ellipseOf(group, choices) : null,
  }));
}

/** None where the group is too small for one, or the model has a single component. */
function ellipseOf(group: GroupModel, choices: ScoresChoices): ScoresEllipse | null {
  const last = Math.max(...choices.components);
  if (group.n < FEWEST_SHERDS || group.scoreCovariance === null || last >= group.scoreMean.length)
    return null;
  return confidenceEllipse(group, choices.components, choices.level);
}
