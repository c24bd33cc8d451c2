import { covariance } from '../statistics/covariance.ts';
import { newObservationLimit } from '../statistics/hotelling.ts';
import { columnDeviations, columnMeans } from '../statistics/moments.ts';
import { COMFORTABLE_DF, chooseSpread, reachOf, type SpreadChoice } from './choose-spread.ts';
import { leaveOneOut, leaveOneOutOff } from './leave-one-out.ts';
import type { References } from './refitted-axes.ts';
import { type FittedScale, unscale } from './scale.ts';
import { type FittedSpread, fitSpread, orRefusal } from './spread.ts';
import type { CovarianceChoice, GroupModel, GroupSpread, Pca, Replaced } from './types.ts';

type Row = readonly number[];

/** One member as a group sees it. */
export interface GroupMember {
  readonly id: string;
  readonly coordinates: Row;
  readonly scores: Row;
}

/** What all groups of a model share. */
export interface GroupSetting {
  readonly oxides: readonly string[];
  readonly scale: FittedScale;
  readonly pca: Pca;
  readonly references: References;
  /** From `freeAxes`. */
  readonly axes: readonly Row[];
  readonly covariance: CovarianceChoice;
  readonly replaced: readonly Replaced[];
}

/** Oxides replaced in all, and in at least half but not all, of a group's members. */
function belowDetection(members: readonly GroupMember[], { oxides, replaced }: GroupSetting) {
  const ids = new Set(members.map((m) => m.id));
  const own = replaced.filter((r) => ids.has(r.sample));
  const count = (oxide: string) => own.filter((r) => r.oxide === oxide).length;
  const n = members.length;
  return {
    all: oxides.filter((oxide) => count(oxide) === n),
    half: oxides.filter((oxide) => count(oxide) < n && count(oxide) * 2 >= n),
  };
}

function detectionWarnings({ all, half }: { all: readonly string[]; half: readonly string[] }): string[] {
  const by = 'its spread is set by the value that replaces it, not by the sherds';
  return [
    ...all.map((oxide) => `${oxide} is below detection in every sherd of the group: ${by}.`),
    ...half.map((oxide) => `${oxide} is below detection in at least half the sherds of the group: ${by}.`),
  ];
}

function powerWarnings(spread: FittedSpread, n: number, members: readonly number[] | null): string[] {
  const { method, p } = spread;
  const exact = method === 'sample' || method === 'components';
  const weak =
    exact && n - p < COMFORTABLE_DF
      ? [
          `n = ${n} sherds in p = ${p} directions leave only n − p = ${n - p} degrees of freedom: the 5 % limit lies ${reachOf(n, p).toFixed(1)} times as far out as for a well-known group, and even a sherd far out keeps a fair probability.`,
        ]
      : [];
  const unranked =
    members === null
      ? [`With n = ${n} and p = ${p} no sherd can be left out, so members have no distance of their own.`]
      : [];
  return [...weak, ...unranked];
}

function asSpread(fitted: FittedSpread, explanation: string, n: number): GroupSpread {
  const { method, p, axes, covariance, inverseCholesky, shrinkage } = fitted;
  const exact = method === 'sample' || method === 'components';
  const limit = exact ? newObservationLimit({ n, p }, 0.05) : null;
  return { method, p, explanation, limit, shrinkage, axes, covariance, inverseCholesky };
}

type Distances = Pick<GroupModel, 'spread' | 'refusal' | 'memberD2' | 'memberOff'> & { warnings: string[] };
const noDistances = (refusal: string): Distances => ({
  spread: null,
  refusal,
  memberD2: null,
  memberOff: null,
  warnings: [],
});

function distances(rows: readonly Row[], choice: SpreadChoice, setting: GroupSetting): Distances {
  if ('refusal' in choice) return noDistances(choice.refusal);
  const { method, p, explanation } = choice;
  const axes = method === 'components' ? setting.pca.loadings.slice(0, p) : setting.axes;
  const { value: fitted, refusal } = orRefusal(() => fitSpread(rows, { method, axes }));
  if (!fitted) return noDistances(`The sherds do not spread in every direction: ${refusal}`);
  const memberD2 = leaveOneOut(rows, fitted);
  // Components that span all that closed parts can move in leave only rounding off them.
  const leaves = method === 'components' && p < setting.axes.length;
  const memberOff = leaves ? leaveOneOutOff(rows, { ...fitted, references: setting.references }) : null;
  if (leaves && !memberOff)
    return noDistances(
      `${p} components need references that spread in as many directions without any one of them; these ${setting.references.n} do not`,
    );
  return {
    spread: asSpread(fitted, explanation, rows.length),
    refusal: null,
    memberD2,
    memberOff,
    warnings: powerWarnings(fitted, rows.length, memberD2),
  };
}

/**
 * Fits one ware group: centre, deviations, and its own spread by the method that n and p allow, with the
 * leave-one-out distances of its members. A group too small for a spread still has its centre and says why. Needs
 * at least one member.
 *
 * @example
 * const members = [[0, 0], [1, -1]].map((coordinates, i) => ({ id: `${i}`, coordinates, scores: [i] }));
 * const scale = { scale: 'log-ratio', mean: [0, 0], sd: null };
 * const found = { eigenvalues: [1], explained: [1], loadings: [[Math.SQRT1_2, -Math.SQRT1_2]] };
 * const setting = { oxides: ['PbO', 'SiO2'], scale, pca: found, references: referencesOf(found, { n: 2, mean: [0, 0] }), axes: found.loadings, covariance: { kind: 'auto' }, replaced: [] };
 * fitGroup({ id: 'a', name: 'Red' }, members, setting).refusal // 'A spread needs at least 4 sherds; the group has n = 2'
 */
export function fitGroup(
  group: { readonly id: string; readonly name: string },
  members: readonly GroupMember[],
  setting: GroupSetting,
): GroupModel {
  const rows = members.map((m) => m.coordinates);
  const n = rows.length;
  const below = belowDetection(members, setting);
  const p = setting.axes.length;
  // log10 has one component more than free directions: the bend of the constant sum, which is no spread.
  const components = Math.min(setting.pca.loadings.length, p);
  const request = { n, p, components, undetected: below.all };
  const { warnings, ...found } = distances(rows, chooseSpread(request, setting.covariance), setting);
  const mean = columnMeans(rows);
  const scores = members.map((m) => m.scores);
  return {
    ...group,
    n,
    mean,
    centre: unscale(mean, setting.scale),
    deviation: n > 1 ? columnDeviations(rows) : null,
    ...found,
    warnings: [...detectionWarnings(below), ...warnings],
    memberIds: members.map((m) => m.id),
    scoreMean: columnMeans(scores),
    scoreCovariance: n > 1 ? covariance(scores) : null,
  };
}
