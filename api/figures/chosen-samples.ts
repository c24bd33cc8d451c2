import type { Placement } from '../domain/placement/types.ts';
import type { ReferenceModel } from '../domain/reference/types.ts';

/** A specimen of a comparison as figures of single oxides show it: closed wt% on the oxides compared. */
export interface ShownSample {
  readonly id: string;
  readonly label: string;
  /** Place of its ware group in the study's order; null for a replica. */
  readonly slot: number | null;
  readonly chosen: boolean;
  readonly parts: readonly number[];
}
export interface ShownGroup {
  readonly name: string;
  readonly slot: number;
  readonly n: number;
}
export interface Slots {
  readonly slots: Readonly<Record<string, number>>;
  readonly chosen: string | null;
}

/** References by group, then replicas, the chosen one last and so foremost. */
export function shownSamples(
  model: ReferenceModel,
  placements: readonly Placement[],
  { slots, chosen }: Slots,
): { samples: ShownSample[]; groups: ShownGroup[] } {
  const slotOf = (group: string) => slots[group] ?? model.groups.findIndex(({ id }) => id === group);
  const references = model.members.map(({ id, label, group, parts }) => ({
    ...{ id, label, parts, slot: slotOf(group), chosen: false },
  }));
  const replicas = placements
    .map(({ id, label, parts }) => ({ id, label, parts, slot: null, chosen: id === chosen }))
    .sort((one, other) => Number(one.chosen) - Number(other.chosen));
  const groups = model.groups.map(({ id, name, n }) => ({ name, n, slot: slotOf(id) }));
  return { samples: [...references, ...replicas], groups };
}
