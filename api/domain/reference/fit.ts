import type { Sample } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import { chooseParts } from './choose-parts.ts';
import { type Composed, compose } from './compose.ts';
import { fitMembers, type Names } from './fit-members.ts';
import type { GroupModel, ModelSettings, ReferenceModel } from './types.ts';

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

function emptyGroups(groups: readonly GroupModel[], settings: ModelSettings, names: Names): string[] {
  const filled = new Set(groups.map((g) => g.id));
  return settings.groups
    .filter((id) => !filled.has(id))
    .map((id) => `${names[id] ?? id} has no sherd that can be compared, and is left out.`);
}

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
  const sherds = kept.map(({ id, label, group }, i) => ({
    id,
    label,
    group: group!,
    parts: composed[i]!.parts,
  }));
  const replaced = composed.flatMap((c) => c.replaced);
  const fitted = fitMembers(sherds, { parts: chosen.parts, replaced, settings, names });
  return {
    settings,
    ...chosen,
    replaced,
    warnings: [...chosen.warnings, ...emptyGroups(fitted.groups, settings, names)],
    limits: largestLimits(composed),
    ...fitted,
  };
}
