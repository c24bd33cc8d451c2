import { offWithout } from '../reference/leave-one-out.ts';
import { referencesOf } from '../reference/refitted-axes.ts';
import { centreOf, coordinatesOf } from '../reference/scale.ts';
import { type FittedSpread, fitSpread, orRefusal } from '../reference/spread.ts';
import type { GroupModel, ReferenceModel } from '../reference/types.ts';
import { columnDeviations, columnMeans } from '../statistics/moments.ts';

/** A group as one sample sees it: all of it for an outsider, the others for one of its members. */
export interface Surroundings {
  readonly n: number;
  readonly mean: readonly number[];
  readonly deviation: readonly number[] | null;
  readonly spread: FittedSpread | null;
  readonly refusal: string | null;
  /** Leave-one-out distances of the sherds the sample is compared with. */
  readonly memberD2: readonly number[] | null;
  /** Under components that leave something out: what the distance off is taken from, and the members' own. */
  readonly off: {
    readonly mean: readonly number[];
    readonly axes: readonly (readonly number[])[];
    readonly members: readonly number[];
  } | null;
  readonly leaveOneOut: boolean;
}

function whole(group: GroupModel): Surroundings {
  const { n, mean, deviation, refusal, memberD2, memberOff } = group;
  const spread = group.spread && { ...group.spread, mean };
  const off = spread && memberOff && { mean, axes: spread.axes, members: memberOff };
  return { n, mean, deviation, spread, refusal, memberD2, off, leaveOneOut: false };
}

function others(group: GroupModel, model: ReferenceModel, id: string): Surroundings {
  const rows = model.members.flatMap((m) =>
    m.group === group.id && m.id !== id ? [coordinatesOf(model, m.parts)] : [],
  );
  if (rows.length === 0)
    return { ...whole(group), spread: null, refusal: 'It is the only sherd of the group' };
  const { spread: model_, refusal } = group;
  const refit = model_ && orRefusal(() => fitSpread(rows, { method: model_.method, axes: model_.axes }));
  const without = (distances: readonly number[] | null) =>
    distances?.filter((_, i) => group.memberIds[i] !== id) ?? null;
  return {
    n: rows.length,
    mean: columnMeans(rows),
    deviation: rows.length > 1 ? columnDeviations(rows) : null,
    spread: refit?.value ?? null,
    refusal: refit?.refusal ? `Without it the group is too small: ${refit.refusal}` : refusal,
    memberD2: without(group.memberD2),
    off: offOthers(group, model, { id, members: without(group.memberOff) }),
    leaveOneOut: true,
  };
}

/** Components refitted without a member are what it was measured off when the model was fitted. */
function offOthers(
  { spread, mean, n }: GroupModel,
  model: ReferenceModel,
  { id, members }: { readonly id: string; readonly members: readonly number[] | null },
): Surroundings['off'] {
  if (!spread || !members) return null;
  const row = coordinatesOf(model, model.members.find((m) => m.id === id)!.parts);
  const references = referencesOf(model.pca, { n: model.members.length, mean: centreOf(model) });
  const without = offWithout(row, { mean, axes: spread.axes, references }, n);
  return without && { mean: without.mean, axes: without.axes, members };
}

/**
 * A group as a sample sees it. A member never takes part in the mean and spread it is measured against: those are
 * refitted to the others, D² on the same axes, the distance off components on components refitted without it.
 *
 * @example
 * const group = { id: 'g', n: 3, mean: [0, 0], deviation: [1, 1], spread: null, refusal: 'too few', memberIds: ['a'], memberD2: null, memberOff: null };
 * surroundingsOf(group, { members: [] }, 'b').leaveOneOut // false
 */
export function surroundingsOf(group: GroupModel, model: ReferenceModel, id: string): Surroundings {
  return group.memberIds.includes(id) ? others(group, model, id) : whole(group);
}
