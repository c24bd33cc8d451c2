import type { GroupModel, ReferenceModel } from '../reference/types.ts';
import { RequirementError } from '../requirement.ts';
import { cholesky } from '../statistics/cholesky.ts';
import { newObservationLimit } from '../statistics/hotelling.ts';
import { mahalanobis } from '../statistics/mahalanobis.ts';

/** A ware group as a cloud of targets: centre and spread in centred log-ratios, and where its edge lies. */
export interface TargetSpread {
  readonly name: string;
  readonly n: number;
  readonly parts: readonly string[];
  readonly mean: readonly number[];
  /** Orthonormal rows that span the directions in which the group's spread is known. */
  readonly axes: readonly (readonly number[])[];
  /** Packed lower Cholesky factor of the covariance on those axes, and its inverse. */
  readonly factor: readonly number[];
  readonly inverse: readonly number[];
  /**
   * A new member falls as a multivariate t with `df` degrees of freedom and the covariance times `scale`²; null
   * draws plain normals, for a shrunk covariance.
   */
  readonly tails: { readonly df: number; readonly scale: number } | null;
  /** D² at the edge. */
  readonly limit: number;
  /** Distance off the axes at the edge; null where the axes span everything or nothing is known. */
  readonly offLimit: number | null;
  readonly words: string;
}

/**
 * A group of a log-ratio reference model as a cloud of targets. The edge is where a new member would lie within
 * `level` of the time by Hotelling's T² (F); under a shrunk covariance, which has no exact distribution, it is the
 * furthest member's leave-one-out D². Throws where the model's scale is another, where the group's spread was
 * refused, or where there are too few members to set an edge.
 * @example
 * targetSpreadOf({ settings: { scale: 'log10' } }, { name: 'Red' }) // throws log-ratio
 */
export function targetSpreadOf(model: ReferenceModel, group: GroupModel, level = 0.95): TargetSpread {
  if (model.settings.scale !== 'log-ratio')
    throw new RequirementError(
      `batches inside a group need a log-ratio model; this one is ${model.settings.scale}`,
    );
  const { spread, name, n } = group;
  if (!spread)
    throw new RequirementError(
      `batches inside ${name} need its spread: ${group.refusal ?? 'the model gives none'}`,
    );
  if (!(level > 0 && level < 1))
    throw new RequirementError(`an edge needs a level between 0 and 1; found ${level}`);
  return {
    name,
    n,
    parts: model.parts,
    mean: group.mean,
    axes: spread.axes,
    factor: [...cholesky(spread.covariance)],
    inverse: spread.inverseCholesky,
    offLimit: group.memberOff ? Math.max(...group.memberOff) : null,
    ...edgeOf(group, level),
  };
}

function edgeOf(
  { spread, n, name, memberD2 }: GroupModel,
  level: number,
): Pick<TargetSpread, 'limit' | 'words' | 'tails'> {
  const { p, method } = spread!;
  if ((method === 'sample' || method === 'components') && n > p)
    return {
      limit: newObservationLimit({ n, p }, 1 - level),
      tails: { df: n - p, scale: Math.sqrt(((n - 1) * (n + 1)) / (n * (n - p))) },
      words: `inside: where ${100 * level} % of members would lie (Hotelling's T², n ${n}, p ${p})`,
    };
  if (!memberD2?.length)
    throw new RequirementError(
      `batches inside ${name} need enough members to set an edge; n is ${n} in ${p} directions`,
    );
  return {
    limit: Math.max(...memberD2),
    tails: null,
    words: `inside: no further out than the furthest member (leave-one-out D², n ${n}); a shrunk covariance has no exact limit`,
  };
}

/**
 * Whether a composition in centred log-ratios lies inside a group's edge.
 * @example
 * insideSpread([0.1, -0.1], { mean: [0, 0], axes: [[Math.SQRT1_2, -Math.SQRT1_2]], inverse: [1], limit: 0.03, offLimit: null }) // true
 * insideSpread([1, -1], { mean: [0, 0], axes: [[Math.SQRT1_2, -Math.SQRT1_2]], inverse: [1], limit: 0.03, offLimit: null }) // false
 */
export function insideSpread(clr: readonly number[], spread: TargetSpread): boolean {
  const gap = clr.map((v, j) => v - spread.mean[j]!);
  const along = spread.axes.map((axis) => axis.reduce((sum, a, j) => sum + a * gap[j]!, 0));
  const centre = along.map(() => 0);
  if (mahalanobis(along, { mean: centre, inverseCholesky: spread.inverse }) > spread.limit) return false;
  if (spread.offLimit === null) return true;
  const off2 = gap.reduce((sum, g) => sum + g * g, 0) - along.reduce((sum, a) => sum + a * a, 0);
  return Math.sqrt(Math.max(0, off2)) <= spread.offLimit;
}
