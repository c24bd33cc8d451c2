import { quantileSorted } from 'd3';
import type { Placement } from '../domain/placement/types.ts';
import { coordinatesOf } from '../domain/reference/scale.ts';
import type { GroupModel, ReferenceModel } from '../domain/reference/types.ts';
import type { ProfileData, ProfileSpread } from './profile-data.ts';

export interface ProfileChoices {
  readonly id: string;
  /** Ware group the replicas are held against. */
  readonly group: string;
  readonly slot: number;
  readonly basis: ProfileData['basis'];
  /** Replica whose distance orders the oxides; null for none. */
  readonly chosen: string | null;
}

/** Fewer sherds than this have no quartiles worth drawing. */
const FEWEST_FOR_QUARTILES = 5;

/** What the oxide profile draws; the oxides that hold the chosen replica off come first. Null for an unknown group. */
export function profileData(
  model: ReferenceModel,
  placements: readonly Placement[],
  choices: ProfileChoices,
): ProfileData | null {
  const group = model.groups.find(({ id }) => id === choices.group);
  if (group === undefined) return null;
  const value = valuesIn(model, group, choices.basis);
  const members = model.members
    .filter((member) => member.group === group.id)
    .map(({ parts }) => value(parts));
  const replicas = placements.map(({ parts }) => value(parts));
  const rows = partsByShare(model, chosenContributions(placements, choices)).map(
    ({ oxide, factor, share }) => {
      const part = model.parts.indexOf(oxide);
      const values = replicas.map((row) => row[part]!);
      return { oxide, spread: spreadOf(members.map((row) => row[part]!)), values, factor, share };
    },
  );
  return {
    id: choices.id,
    title: `Oxides of ${placements.length === 1 ? placements[0]!.label : `${placements.length} replicas`} against ${group.name}`,
    group: { name: group.name, slot: choices.slot, n: group.n },
    basis: choices.basis,
    rows,
    replicas: placements.map(({ id, label }) => ({ id, label, chosen: id === choices.chosen })),
  };
}

/** wt% as they are, or each as a multiple of the group's centre in the model's own scale. */
function valuesIn(model: ReferenceModel, group: GroupModel, basis: ProfileData['basis']) {
  return (parts: readonly number[]): readonly number[] => {
    if (basis === 'amount') return parts;
    if (model.settings.scale !== 'log-ratio') return parts.map((part, j) => part / group.centre[j]!);
    return coordinatesOf(model, parts).map((coordinate, j) => Math.exp(coordinate - group.mean[j]!));
  };
}

const chosenContributions = (placements: readonly Placement[], { chosen, group }: ProfileChoices) =>
  placements.find(({ id }) => id === chosen)?.groups.find((placed) => placed.group === group)?.contributions;

function partsByShare(model: ReferenceModel, contributions: ReturnType<typeof chosenContributions>) {
  if (contributions === undefined) return model.parts.map((oxide) => ({ oxide, factor: null, share: null }));
  return [...contributions].sort((one, other) => other.share - one.share);
}

function spreadOf(values: readonly number[]): ProfileSpread {
  const each = [...values].sort((one, other) => one - other);
  const at = (share: number) => quantileSorted(each, share)!;
  const quartiles = each.length < FEWEST_FOR_QUARTILES ? null : ([at(0.25), at(0.5), at(0.75)] as const);
  return { low: each[0]!, high: each.at(-1)!, quartiles, each };
}
