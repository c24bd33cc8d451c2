import { scaleOf } from '../reference/scale.ts';
import { distanceOff, distanceSquared, type FittedSpread } from '../reference/spread.ts';
import type { GroupModel, GroupSpread, ReferenceModel } from '../reference/types.ts';
import { membershipOfNewcomer } from '../statistics/hotelling.ts';
import { contributionsOf } from './contributions.ts';
import { type Companions, companionsOf, pooledRank } from './pooled-rank.ts';
import { type Surroundings, surroundingsOf } from './surroundings.ts';
import type { GroupPlacement } from './types.ts';
import { rankAmong, verdictOf } from './verdict.ts';

/** A sample on a model's parts. */
export interface Located {
  readonly id: string;
  /** Closed wt%. */
  readonly parts: readonly number[];
  /** Working scale. */
  readonly coordinates: readonly number[];
  /** Oxides below detection in the sample, replaced. */
  readonly replaced: readonly string[];
}

const NO_DISTRIBUTION =
  'A shrunk covariance has no exact distribution, so no probability is given; the rank among the members is.';
/** Share of the gap from which a replaced oxide is worth a warning. */
const NOTABLE = 0.25;

function methodName({ method, p }: Pick<GroupSpread, 'method' | 'p'>): string {
  const names = {
    sample: `sample covariance in ${p} directions`,
    components: p === 1 ? 'first component' : `first ${p} components`,
    'ledoit-wolf': 'Ledoit–Wolf shrinkage',
    oas: 'OAS shrinkage',
  };
  return names[method];
}

type Measures = Pick<
  GroupPlacement,
  'd2' | 'membership' | 'membershipRefusal' | 'df' | 'typicality' | 'off' | 'verdict'
>;
const UNMEASURED: Measures = {
  d2: null,
  membership: null,
  membershipRefusal: null,
  df: null,
  typicality: null,
  off: null,
  verdict: 'unknown',
};

const furthest = (distances: readonly number[]) => distances.reduce((a, b) => Math.max(a, b), 0);

function offAxes(coordinates: readonly number[], around: Surroundings): GroupPlacement['off'] {
  if (!around.off) return null;
  const { members } = around.off;
  const distance = distanceOff(coordinates, around.off);
  return { distance, furthestMember: furthest(members), rank: rankAmong(distance, members) };
}

function measures(
  coordinates: readonly number[],
  spread: FittedSpread,
  { around, companions }: { around: Surroundings; companions: Companions | null },
): Measures {
  const d2 = distanceSquared(coordinates, spread);
  const exact = spread.method === 'sample' || spread.method === 'components';
  const found = exact ? membershipOfNewcomer(d2, { n: around.n, p: spread.p }) : null;
  const membership = found?.probability ?? null;
  const typicality = companions && pooledRank(coordinates, companions);
  const ratio = around.memberD2 && Math.sqrt(d2 / furthest(around.memberD2));
  const off = offAxes(coordinates, around);
  return {
    d2,
    membership,
    membershipRefusal: exact ? null : NO_DISTRIBUTION,
    df: found?.df ?? null,
    typicality,
    off,
    verdict: verdictOf({ membership, typicality, ratio, off }),
  };
}

/**
 * Sets one sample against one ware group of a model.
 *
 * @example
 * const group = { id: 'g', name: 'Red', n: 3, mean: [0, 0], deviation: [1, 1], spread: null, refusal: 'too few', warnings: [], memberIds: [], memberD2: null, memberOff: null };
 * const model = { settings: { scale: 'log-ratio' }, parts: ['PbO', 'SiO2'], mean: [0, 0], sd: null, members: [] };
 * const sample = { id: 's', parts: [88.0797, 11.9203], coordinates: [1, -1], replaced: [] };
 * placeInGroup(sample, group, model).distance // 1.414214
 * placeInGroup(sample, group, model).verdict // 'unknown'
 */
export function placeInGroup(sample: Located, group: GroupModel, model: ReferenceModel): GroupPlacement {
  const around = surroundingsOf(group, model, sample.id);
  const { n, mean, deviation, spread, refusal, leaveOneOut } = around;
  const { parts, coordinates } = sample;
  const contributions = contributionsOf({
    oxides: model.parts,
    scale: scaleOf(model),
    parts,
    coordinates,
    mean,
    deviation,
    spread,
  });
  const replaced = contributions.filter((c) => c.share >= NOTABLE && sample.replaced.includes(c.oxide));
  return {
    group: group.id,
    name: group.name,
    n,
    p: spread?.p ?? null,
    distance: Math.hypot(...coordinates.map((v, j) => v - mean[j]!)),
    ...(spread
      ? measures(coordinates, spread, { around, companions: companionsOf(sample, group, model) })
      : UNMEASURED),
    method: spread ? methodName(spread) : 'refused',
    refusal,
    warnings: [
      ...group.warnings,
      ...replaced.map(
        ({ oxide }) =>
          `${oxide} is below detection here: how far it is off is set by the value that replaces it.`,
      ),
    ],
    leaveOneOut,
    contributions,
  };
}
