import { projectAll } from '../statistics/blocks.ts';
import { pca } from '../statistics/pca.ts';
import { fitGroup, type GroupSetting } from './group.ts';
import { referencesOf } from './refitted-axes.ts';
import { centreOf, type FittedScale, fitScale, freeAxes, scaled } from './scale.ts';
import type { GroupModel, Member, ModelSettings, Pca, ReferenceModel } from './types.ts';

type Row = readonly number[];

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

/** A sherd that enters a model: closed wt% on its oxides. */
export type Sherd = Omit<Member, 'scores'>;
export type Names = Readonly<Record<string, string>>;
type Fitted = Pick<ReferenceModel, 'mean' | 'sd' | 'pca' | 'groups' | 'members'>;

/**
 * From compositions on: scale, components, scores, and every group's centre and spread. Throws when a scale or
 * components cannot be fitted.
 *
 * @example
 * const sherd = (id, lead) => ({ id, label: id, group: 'g', parts: [lead, 100 - lead] });
 * const settings = { groups: ['g'], scale: 'log-ratio', covariance: { kind: 'auto' } };
 * fitMembers([sherd('a', 50), sherd('b', 60)], { parts: ['PbO', 'SiO2'], replaced: [], settings, names: {} }).groups[0].n // 2
 */
export function fitMembers(
  sherds: readonly Sherd[],
  {
    parts,
    replaced,
    settings,
    names,
  }: Pick<ReferenceModel, 'parts' | 'replaced' | 'settings'> & { names: Names },
): Fitted {
  const scale = fitScale(
    sherds.map((s) => s.parts),
    settings.scale,
  );
  const coordinates = sherds.map((s) => scaled(s.parts, scale));
  const { components: found, scores } = components(coordinates, scale);
  const members = sherds.map((s, i) => ({ ...s, scores: scores[i]! }));
  const setting = {
    oxides: parts,
    scale,
    pca: found,
    references: referencesOf(found, { n: members.length, mean: centreOf(scale) }),
    axes: freeAxes(scale),
    covariance: settings.covariance,
    replaced,
  };
  const groups = fitGroups({ members, coordinates }, { settings, names, setting });
  return { mean: scale.mean, sd: scale.sd, pca: found, groups, members };
}

/**
 * A model fitted anew to other compositions of the same sherds (closed wt%, in the order of its members), by the same
 * methods: how values drawn below detection are carried. Throws when a scale or components cannot be fitted.
 *
 * @example
 * const amount = (value) => ({ value, limit: null, sigma: null, sigmaBasis: null, resolution: null });
 * const sherd = (id, lead) => ({ id, label: id, group: 'g', role: 'reference', measured: 'paint', spots: 1, rawTotal: 100, amounts: { PbO: amount(lead), SiO2: amount(100 - lead) } });
 * const settings = { groups: ['g'], parts: null, scale: 'log-ratio', covariance: { kind: 'auto' }, replacement: { fraction: 0.65, limits: {} } };
 * const model = fitReference([sherd('a', 50), sherd('b', 60), sherd('c', 70)], settings, { g: 'Red' });
 * refitReference(model, [[50, 50], [50, 50], [50, 50.1]]).groups[0].centre // [49.98333, 50.01667]
 */
export function refitReference(model: ReferenceModel, compositions: readonly Row[]): ReferenceModel {
  const names = Object.fromEntries(model.groups.map((group) => [group.id, group.name]));
  const sherds = model.members.map(({ id, label, group }, i) => ({
    id,
    label,
    group,
    parts: compositions[i]!,
  }));
  return { ...model, ...fitMembers(sherds, { ...model, names }) };
}
