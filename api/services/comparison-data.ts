import { and, eq, inArray, or, type SQL } from 'drizzle-orm';
import { technique, visibleAnalysis, visibleSpecimen, visibleWareGroup } from '../../db/schema/schema.ts';
import type { ComparisonData } from '../contract/comparison-data.ts';
import type { ComparisonRequest } from '../contract/placement.ts';
import type { Caller } from './access.ts';

/** Everything a comparison is made from, as reported, as it stands in the study: ordered as a comparison reads it. */
export async function readComparisonData(
  { db }: Caller,
  studyId: string,
  request: ComparisonRequest,
): Promise<ComparisonData> {
  const specimens = await db
    .select(specimenColumns)
    .from(visibleSpecimen)
    .where(and(eq(visibleSpecimen.studyId, studyId), takesPart(request)))
    .orderBy(visibleSpecimen.labelOrder, visibleSpecimen.id);
  const own = specimens.flatMap(({ group }) => group ?? []);
  const groups = await db
    .select(groupColumns)
    .from(visibleWareGroup)
    .where(
      and(
        eq(visibleWareGroup.studyId, studyId),
        inArray(visibleWareGroup.id, [...groupsOf(request), ...own]),
      ),
    )
    .orderBy(visibleWareGroup.position, visibleWareGroup.name);
  const analyses = await db
    .select({ ...analysisColumns, relativeError: technique.relativeError })
    .from(visibleAnalysis)
    .innerJoin(visibleSpecimen, eq(visibleSpecimen.id, visibleAnalysis.specimenId))
    .leftJoin(technique, eq(technique.code, visibleAnalysis.technique))
    .where(and(eq(visibleAnalysis.studyId, studyId), takesPart(request), isRead(request)))
    .orderBy(visibleSpecimen.labelOrder, visibleSpecimen.id, visibleAnalysis.row, visibleAnalysis.id);
  return { groups, specimens, analyses } as ComparisonData;
}

const { id, name, period, place, source, doi, notes, position } = visibleWareGroup;
const groupColumns = { id, name, period, place, source, doi, notes, position };
const specimenColumns = {
  id: visibleSpecimen.id,
  label: visibleSpecimen.label,
  catalogueNumber: visibleSpecimen.catalogueNumber,
  kind: visibleSpecimen.kind,
  group: visibleSpecimen.wareGroupId,
  notes: visibleSpecimen.notes,
};
const analysisColumns = {
  id: visibleAnalysis.id,
  specimen: visibleAnalysis.specimenId,
  measured: visibleAnalysis.measured,
  technique: visibleAnalysis.technique,
  laboratory: visibleAnalysis.laboratory,
  instrument: visibleAnalysis.instrument,
  date: visibleAnalysis.date,
  source: visibleAnalysis.source,
  doi: visibleAnalysis.doi,
  spot: visibleAnalysis.spot,
  note: visibleAnalysis.note,
  reported: visibleAnalysis.reported,
};

/** Groups compared, and groups whose mean slip is drawn off. */
function groupsOf({ settings, slip = [] }: ComparisonRequest): Set<string> {
  return new Set([
    ...settings.groups,
    ...slip.flatMap((choice) => (choice.source.kind === 'group' ? [choice.source.group] : [])),
  ]);
}

/** Sherds of those groups, replicas asked for, and specimens whose slip is drawn off. */
function takesPart(request: ComparisonRequest): SQL | undefined {
  const { replicas, slip = [] } = request;
  const slips = slip.flatMap((choice) => [
    choice.specimen,
    ...(choice.source.kind === 'specimen' ? [choice.source.specimen] : []),
  ]);
  const named = [...(replicas ?? []), ...slips];
  return or(
    inArray(visibleSpecimen.wareGroupId, [...groupsOf(request)]),
    replicas === null ? eq(visibleSpecimen.kind, 'replica') : undefined,
    named.length > 0 ? inArray(visibleSpecimen.id, named) : undefined,
  );
}

/** Analyses of what is compared, and of the slip where any is drawn off. */
function isRead({ measured, slip = [] }: ComparisonRequest): SQL | undefined {
  const read = eq(visibleAnalysis.measured, measured);
  return slip.length > 0 ? or(read, eq(visibleAnalysis.measured, 'slip')) : read;
}
