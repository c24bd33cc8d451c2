import { and, eq, inArray, or } from 'drizzle-orm';
import { visibleSpecimen, visibleWareGroup } from '../../db/schema/schema.ts';
import type { Comparison, ComparisonRequest, Exclusion } from '../contract/placement.ts';
import type { Sample } from '../domain/composition/types.ts';
import { placeSample } from '../domain/placement/place.ts';
import type { Placement } from '../domain/placement/types.ts';
import { fitReference } from '../domain/reference/fit.ts';
import type { ReferenceModel } from '../domain/reference/types.ts';
import { type Caller, requireStudy } from './access.ts';
import { slipDrawer } from './draw-slip.ts';
import { attempt, Failure } from './failure.ts';
import { readSamples, type Samples } from './samples.ts';

/** Fits the reference model that is asked for and places the replicas in it. Nothing is stored. */
export async function compare(
  caller: Caller,
  studyId: string,
  request: ComparisonRequest,
): Promise<Comparison> {
  await requireStudy(caller, studyId);
  const groups = await chosenGroups(caller, studyId, request);
  const specimens = await specimensOf(caller, studyId, request);
  const samples = await readSamples(caller, studyId, request);
  const names = Object.fromEntries(groups.map((group) => [group.id, group.name]));
  const slip = await slipDrawer(caller, studyId, request);
  const drawn = (all: readonly Sample[]) => all.flatMap((sample) => slip.draw(sample) ?? []);
  const references = drawn(samples.references);
  // Which oxides are compared is settled with slip in, so that drawing it off a replica never changes the question.
  const model = fitReference([...references, ...placedOnly(samples)], request.settings, names);
  const { placements, refused } = placeAll(model, drawn(samples.targets));
  const used = countByGroup(model.members);
  const answer = {
    request,
    model,
    placements,
    replicas: samples.targets,
    references: samples.references.map(({ amounts: _amounts, role: _role, ...brief }) => brief),
    groups: groups.map((group) => ({
      ...group,
      specimens: specimens.filter((one) => one.group === group.id).length,
      used: used.get(group.id) ?? 0,
    })),
    excluded: [
      ...samples.excluded,
      ...slip.refused(),
      ...refused,
      ...leftOutBy(model, samples),
      ...unmeasured(samples, specimens, request),
    ],
    remarks: samples.remarks,
    slip: slip.drawn(),
  };
  return answer as Comparison;
}

const placedOnly = ({ targets }: Samples) => targets.filter((sample) => sample.role === 'replica');

function placeAll(model: ReferenceModel, targets: readonly Sample[]) {
  const placements: Placement[] = [];
  const refused: Exclusion[] = [];
  for (const sample of targets) {
    const result = attempt(() => placeSample(model, sample));
    if ('value' in result) placements.push(result.value);
    else refused.push(exclusion(sample, result.reason));
  }
  return { placements, refused };
}

function leftOutBy(model: ReferenceModel, { references }: Samples): Exclusion[] {
  const byId = new Map(references.map((sample) => [sample.id, sample]));
  return model.leftOut.flatMap(({ sample, reason }) => {
    const found = byId.get(sample);
    return found ? [exclusion(found, reason)] : [];
  });
}

/** Specimens of the chosen groups, and replicas asked for, of which this was never measured. */
function unmeasured(
  { references, targets, excluded }: Samples,
  specimens: readonly Listed[],
  { measured }: ComparisonRequest,
) {
  const seen = new Set([...references, ...targets].map((sample) => sample.id));
  for (const { specimen } of excluded) seen.add(specimen);
  return specimens
    .filter((one) => !seen.has(one.id))
    .map(({ id, label, group }) => ({
      specimen: id,
      label,
      group,
      analysis: null,
      reason: `a comparison of ${measured} needs an analysis of it; ${label} has none`,
    }));
}

const exclusion = ({ id, label, group }: Sample, reason: string): Exclusion => ({
  specimen: id,
  label,
  group,
  analysis: null,
  reason,
});

function countByGroup(members: readonly { group: string }[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { group } of members) counts.set(group, (counts.get(group) ?? 0) + 1);
  return counts;
}

async function chosenGroups({ db }: Caller, studyId: string, { settings }: ComparisonRequest) {
  const rows = await db
    .select({ id: visibleWareGroup.id, name: visibleWareGroup.name, position: visibleWareGroup.position })
    .from(visibleWareGroup)
    .where(and(eq(visibleWareGroup.studyId, studyId), inArray(visibleWareGroup.id, [...settings.groups])))
    .orderBy(visibleWareGroup.position, visibleWareGroup.name);
  const missing = settings.groups.filter((id) => !rows.some((row) => row.id === id));
  if (missing.length === 0) return rows;
  const message = `every ware group chosen must exist in this study; ${missing.length} of them do not.`;
  throw new Failure('invalid', message, [{ at: 'settings.groups', message }]);
}

type Listed = Awaited<ReturnType<typeof specimensOf>>[number];

function specimensOf({ db }: Caller, studyId: string, { settings, replicas }: ComparisonRequest) {
  const { id, label, kind, wareGroupId: group } = visibleSpecimen;
  const inGroups = and(eq(kind, 'sherd'), inArray(group, [...settings.groups]));
  const wanted = replicas && replicas.length > 0 ? inArray(id, replicas) : undefined;
  return db
    .select({ id, label, group })
    .from(visibleSpecimen)
    .where(and(eq(visibleSpecimen.studyId, studyId), wanted ? or(inGroups, wanted) : inGroups))
    .orderBy(visibleSpecimen.labelOrder, id);
}
