import { axesWith, referencesOf } from '../reference/refitted-axes.ts';
import { centreOf } from '../reference/scale.ts';
import { orRefusal, spreadOnAxes } from '../reference/spread.ts';
import type { GroupModel, GroupSpread, ReferenceModel } from '../reference/types.ts';
import { mahalanobis } from '../statistics/mahalanobis.ts';
import { project } from '../statistics/pca.ts';
import type { Rank } from './types.ts';
import { rankAmong } from './verdict.ts';

type Row = readonly number[];

/** Relative difference below which two D² are a tie, seen through rounding. */
const TIE = 1e-9;

/** Sherds to be ranked among, on the axes on which they are compared, and how their spread is measured. */
export interface Companions {
  /** From the group's mean, one number an axis. */
  readonly rows: readonly Row[];
  readonly axes: readonly Row[];
  readonly mean: Row;
  readonly method: GroupSpread['method'];
}

/**
 * The sherds of a group that a sample is ranked among (a member not among itself), with the axes on which they are
 * compared: components are refitted to all references and the sample. Null where the group's spread was refused.
 *
 * @example
 * companionsOf({ id: 's', coordinates: [0, 0] }, { id: 'g', mean: [0, 0], spread: null }, { members: [] }) // null
 */
export function companionsOf(
  { id, coordinates }: { readonly id: string; readonly coordinates: Row },
  { id: group, spread, mean, memberIds }: Pick<GroupModel, 'id' | 'spread' | 'mean' | 'memberIds'>,
  model: ReferenceModel,
): Companions | null {
  if (!spread) return null;
  const { method, p } = spread;
  const { loadings } = model.pca;
  const centre = centreOf(model);
  const references = () => referencesOf(model.pca, { n: model.members.length, mean: centre });
  // A member already took part in the components.
  const refitted = method === 'components' && !memberIds.includes(id);
  const axes = refitted ? axesWith(references(), coordinates, p) : spread.axes;
  // Scores on every component carry a member's coordinates, and are shorter to turn than its parts.
  const turn = {
    means: loadings.map(() => 0),
    loadings: axes.map((axis) => project(axis, { means: axis.map(() => 0), loadings })),
  };
  const origin = project(mean, { means: centre, loadings: axes });
  const rows = model.members.flatMap((m) =>
    m.group === group && m.id !== id ? [project(m.scores, turn).map((v, k) => v - origin[k]!)] : [],
  );
  return { rows, axes, mean, method };
}

/**
 * Rank of a sample put among a group's sherds: the spread is fitted to all of them and it alike, and those are counted
 * whose D² in that spread is at least as large. Were it one of them, every rank would be equally likely, whatever the
 * distribution (the argument of conformal prediction: Vovk, Gammerman and Shafer 2005, Algorithmic Learning in a Random
 * World). D² from a spread that the sample took no part in must not be ranked among the members' own: theirs, left
 * out, come from one sherd fewer. Null where all of them together have no spread.
 *
 * @example
 * const rows = [[-1, -1], [1, -1], [-1, 1], [1, 1]];
 * const companions = { rows, axes: [[1, 0], [0, 1]], mean: [1, 1], method: 'sample' };
 * pooledRank([9, 9], companions) // { value: 0.2, atLeastAsFar: 0, of: 4 }
 * pooledRank([1, 1], companions) // { value: 1, atLeastAsFar: 4, of: 4 }
 * pooledRank([1, 1], { ...companions, rows: rows.slice(0, 1) }) // null
 */
export function pooledRank(coordinates: Row, { rows, axes, mean, method }: Companions): Rank | null {
  const own = project(coordinates, { means: mean, loadings: axes });
  const { value: spread } = orRefusal(() => spreadOnAxes([...rows, own], method));
  if (!spread) return null;
  return rankAmong(
    mahalanobis(own, spread) * (1 - TIE),
    rows.map((row) => mahalanobis(row, spread)),
  );
}
