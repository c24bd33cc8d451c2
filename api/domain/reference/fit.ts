import type { Sample } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import { projectAll } from '../statistics/blocks.ts';
import { pca } from '../statistics/pca.ts';
import { chooseParts } from './choose-parts.ts';
import { type Composed, compose } from './compose.ts';
import { fitGroup, type GroupSetting } from './group.ts';
import { referencesOf } from './refitted-axes.ts';
import { centreOf, type FittedScale, fitScale, freeAxes, scaled } from './scale.ts';
import type { GroupModel, Member, ModelSettings, Pca, ReferenceModel } from './types.ts';

type Row = readonly number[];

/** References in the chosen groups, in the order given, and the samples to be placed. */
function sorted(samples: readonly Sample[], settings: ModelSettings) {
  const groups = new Set(settings.groups);
  const references = samples.filter((s) => s.role === 'reference' && s.group !== null && groups.has(s.group));
  const replicas = samples.filter((s) => s.role === 'replica');
  if (references.length < 2)
    throw new RequirementError(
      `a reference model needs at least two sherds in the chosen groups; found ${references.length}`,
    );
  const seen = new Set<string>();
  const twice = references.find((s) => seen.size === seen.add(s.id).size);
  if (twice)
    throw new RequirementError(`a reference model needs each sherd once; ${twice.label} is there twice`);
  return { references, replicas };
}

function withoutLeftOut(references: readonly Sample[], leftOut: ReferenceModel['leftOut']): Sample[] {
  const gone = new Set(leftOut.map((left) => left.sample));
  const kept = references.filter((s) => !gone.has(s.id));
  if (kept.length < 2)
    throw new RequirementError(
      `a reference model needs at least two sherds with every chosen oxide; found ${kept.length}: ${leftOut.map((l) => `${l.label} (${l.reason})`).join(', ')}`,
    );
  return kept;
}

function largestLimits(composed: readonly Composed[]): Record<string, number> {
  const limits: Record<string, number> = {};
  for (const { oxide, limit } of composed.flatMap((c) => c.replaced))
    limits[oxide] = Math.max(limits[oxide] ?? 0, limit);
  return limits;
}

function asMember(sample: Sample, parts: Row, scores: Row): Member {
  return { id: sample.id, label: sample.label, group: sample.group!, parts, scores };
}

/** Principal components of the references alone, and their scores. */
function components(coordinates: readonly Row[], scale: FittedScale) {
  const { means: _, ...rest } = pca(coordinates);
  const centre = centreOf(scale);
  const flat = projectAll(coordinates, { means: centre, loadings: rest.loadings });
  const count = rest.loadings.length;
  const scores = coordinates.map((_, i) => Array.from(flat.subarray(i * count, (i + 1) * count)));
  return { components: rest as Pca, scores };
}

interface Placed {
  readonly members: readonly Member[];
  readonly coordinates: readonly Row[];
}

function fitGroups(
  { members, coordinates }: Placed,
  { settings, names, setting }: { settings: ModelSettings; names: Names; setting: GroupSetting },
): GroupModel[] {
  return settings.groups.flatMap((id) => {
    const own = members.flatMap((m, i) =>
      m.group === id ? [{ id: m.id, coordinates: coordinates[i]!, scores: m.scores }] : [],
    );
    return own.length > 0 ? [fitGroup({ id, name: names[id] ?? id }, own, setting)] : [];
  });
}

function emptyGroups(groups: readonly GroupModel[], settings: ModelSettings, names: Names): string[] {
  const filled = new Set(groups.map((g) => g.id));
  return settings.groups
    .filter((id) => !filled.has(id))
    .map((id) => `${names[id] ?? id} has no sherd that can be compared, and is left out.`);
}

type Names = Readonly<Record<string, string>>;

/**
 * Fits a reference model: chooses the oxides (see `chooseParts`; replicas count there, and nowhere else), replaces
 * values below detection, takes the working scale, fits principal components to the references alone, and gives
 * every group its centre and spread. Samples: references of the chosen groups, and replicas, closed to 100 wt%;
 * `names` by group id. The model is plain JSON and is all that `placeSample` needs. Throws when fewer than two
 * references or two oxides remain.
 *
 * @example
 * const amount = (value) => ({ value, limit: null, sigma: null, sigmaBasis: null, resolution: null });
 * const sherd = (id, lead) => ({ id, label: id, group: 'g', role: 'reference', measured: 'paint', spots: 1, rawTotal: 100, amounts: { PbO: amount(lead), SiO2: amount(100 - lead) } });
 * const settings = { groups: ['g'], parts: null, scale: 'log-ratio', covariance: { kind: 'auto' }, replacement: { fraction: 0.65, limits: {} } };
 * const model = fitReference([sherd('a', 50), sherd('b', 60), sherd('c', 70)], settings, { g: 'Red' });
 * model.groups[0].centre // [60.29059, 39.70941]
 * fitReference([sherd('a', 50)], settings, {}) // throws needs at least two sherds in the chosen groups; found 1
 */
export function fitReference(
  samples: readonly Sample[],
  settings: ModelSettings,
  names: Names,
): ReferenceModel {
  const { references, replicas } = sorted(samples, settings);
  const chosen = chooseParts({ references, replicas, settings });
  const kept = withoutLeftOut(references, chosen.leftOut);
  const composed = kept.map((s) => compose(s, chosen.parts, settings.replacement));
  const scale = fitScale(
    composed.map((c) => c.parts),
    settings.scale,
  );
  const coordinates = composed.map((c) => scaled(c.parts, scale));
  const { components: found, scores } = components(coordinates, scale);
  const members = kept.map((s, i) => asMember(s, composed[i]!.parts, scores[i]!));
  const replaced = composed.flatMap((c) => c.replaced);
  const setting = {
    oxides: chosen.parts,
    scale,
    pca: found,
    references: referencesOf(found, { n: members.length, mean: centreOf(scale) }),
    axes: freeAxes(scale),
    covariance: settings.covariance,
    replaced,
  };
  const groups = fitGroups({ members, coordinates }, { settings, names, setting });
  return {
    settings,
    ...chosen,
    replaced,
    warnings: [...chosen.warnings, ...emptyGroups(groups, settings, names)],
    limits: largestLimits(composed),
    mean: scale.mean,
    sd: scale.sd,
    pca: found,
    groups,
    members,
  };
}
