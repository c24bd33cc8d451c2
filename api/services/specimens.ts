import { and, asc, count, desc, eq, inArray, isNull, type SQL, sql } from 'drizzle-orm';
import { specimen, visibleSpecimen, visibleWareGroup } from '../../db/schema/schema.ts';
import type { NewSpecimen, Specimen, SpecimenChange, SpecimenQuery } from '../contract/specimen.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure, found, unlessTaken } from './failure.ts';
import { naturalOrder } from './natural-order.ts';
import { everyWord } from './search.ts';

export async function listSpecimens(caller: Caller, studyId: string, query: SpecimenQuery) {
  await requireStudy(caller, studyId);
  const where = wanted(studyId, query);
  const order = query.direction === 'asc' ? asc : desc;
  const [total, rows] = await Promise.all([
    caller.db.select({ n: count() }).from(visibleSpecimen).leftJoin(visibleWareGroup, ofGroup).where(where),
    rowsOf(caller)
      .where(where)
      .orderBy(order(sorting[query.sort]), visibleSpecimen.labelOrder, visibleSpecimen.id)
      .offset(query.offset)
      .limit(query.limit),
  ]);
  return { total: total[0]!.n, offset: query.offset, rows: rows.map(answer) };
}

export async function createSpecimen(caller: Caller, studyId: string, wish: NewSpecimen): Promise<Specimen> {
  await requireStudy(caller, studyId);
  await requireGroup(caller, studyId, wish.group);
  const [row] = await unlessTaken(
    caller.db
      .insert(specimen)
      .values({ ...stored(wish), ...labelled(wish), studyId })
      .returning({ id: specimen.id }),
    taken(wish.label),
  );
  return readSpecimen(caller, studyId, row!.id);
}

export async function readSpecimen(caller: Caller, studyId: string, specimenId: string): Promise<Specimen> {
  await requireStudy(caller, studyId);
  const [row] = await rowsOf(caller).where(
    and(eq(visibleSpecimen.studyId, studyId), eq(visibleSpecimen.id, specimenId)),
  );
  return answer(found(row, 'the specimen'));
}

export async function changeSpecimen(
  caller: Caller,
  studyId: string,
  { specimenId, change }: { specimenId: string; change: SpecimenChange },
): Promise<Specimen> {
  await readSpecimen(caller, studyId, specimenId);
  await requireGroup(caller, studyId, change.group ?? null);
  await unlessTaken(
    caller.db
      .update(specimen)
      .set({ ...stored(change), updatedAt: new Date() })
      .where(eq(specimen.id, specimenId)),
    taken(change.label ?? ''),
  );
  return readSpecimen(caller, studyId, specimenId);
}

/** Its analyses go with it. */
export async function deleteSpecimen(caller: Caller, studyId: string, specimenId: string): Promise<void> {
  await readSpecimen(caller, studyId, specimenId);
  await caller.db.delete(specimen).where(eq(specimen.id, specimenId));
}

export async function changeSpecimens(
  caller: Caller,
  studyId: string,
  { specimens, change }: { specimens: string[]; change: Pick<SpecimenChange, 'kind' | 'group'> },
): Promise<{ count: number }> {
  const ids = await requireSpecimens(caller, studyId, specimens);
  await requireGroup(caller, studyId, change.group ?? null);
  await caller.db
    .update(specimen)
    .set({ ...stored(change), updatedAt: new Date() })
    .where(inArray(specimen.id, ids));
  return { count: ids.length };
}

export async function deleteSpecimens(caller: Caller, studyId: string, specimens: string[]) {
  const ids = await requireSpecimens(caller, studyId, specimens);
  await caller.db.delete(specimen).where(inArray(specimen.id, ids));
  return { count: ids.length };
}

async function requireSpecimens(caller: Caller, studyId: string, specimens: string[]): Promise<string[]> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .select({ id: visibleSpecimen.id })
    .from(visibleSpecimen)
    .where(and(eq(visibleSpecimen.studyId, studyId), inArray(visibleSpecimen.id, specimens)));
  const missing = new Set(specimens).size - rows.length;
  if (missing > 0)
    throw new Failure('not found', `every specimen must exist in this study; ${missing} of them do not.`);
  return rows.map((row) => row.id);
}

async function requireGroup(caller: Caller, studyId: string, group: string | null): Promise<void> {
  if (group === null) return;
  const [row] = await caller.db
    .select({ id: visibleWareGroup.id })
    .from(visibleWareGroup)
    .where(and(eq(visibleWareGroup.studyId, studyId), eq(visibleWareGroup.id, group)));
  if (row !== undefined) return;
  const message = 'the ware group must exist in this study; it does not.';
  throw new Failure('invalid', message, [{ at: 'group', message }]);
}

const groupName = sql<string>`coalesce(${visibleWareGroup.name}, '')`;
const analyses = sql<number>`(select count(*) from visible_analysis a where a.specimen_id = ${visibleSpecimen.id})`;
const measured = sql<string[]>`(
  select coalesce(json_agg(distinct a.measured), '[]') from visible_analysis a
  where a.specimen_id = ${visibleSpecimen.id})`;

const columns = {
  id: visibleSpecimen.id,
  label: visibleSpecimen.label,
  catalogueNumber: visibleSpecimen.catalogueNumber,
  kind: visibleSpecimen.kind,
  group: visibleSpecimen.wareGroupId,
  notes: visibleSpecimen.notes,
  createdAt: visibleSpecimen.createdAt,
  updatedAt: visibleSpecimen.updatedAt,
  analyses: analyses.mapWith(Number),
  measured,
};
const sorting = {
  label: visibleSpecimen.labelOrder,
  catalogueNumber: visibleSpecimen.catalogueOrder,
  kind: visibleSpecimen.kind,
  group: sql`lower(${groupName})`,
  analyses,
  createdAt: visibleSpecimen.createdAt,
};

const ofGroup = eq(visibleWareGroup.id, visibleSpecimen.wareGroupId);

function rowsOf({ db }: Caller) {
  return db.select(columns).from(visibleSpecimen).leftJoin(visibleWareGroup, ofGroup);
}

function wanted(studyId: string, query: SpecimenQuery): SQL | undefined {
  const { label, catalogueNumber, notes } = visibleSpecimen;
  return and(
    eq(visibleSpecimen.studyId, studyId),
    query.kind && eq(visibleSpecimen.kind, query.kind),
    query.group === 'none' ? isNull(visibleSpecimen.wareGroupId) : undefined,
    query.group && query.group !== 'none' ? eq(visibleSpecimen.wareGroupId, query.group) : undefined,
    everyWord(query.search, [label, catalogueNumber, notes, groupName]),
  );
}

function stored({ group, ...fields }: SpecimenChange) {
  const { label, catalogueNumber } = fields;
  return {
    ...fields,
    ...(group === undefined ? {} : { wareGroupId: group }),
    ...(label === undefined ? {} : { labelOrder: naturalOrder(label) }),
    ...(catalogueNumber === undefined ? {} : { catalogueOrder: naturalOrder(catalogueNumber) }),
  };
}

const labelled = ({ label, kind }: NewSpecimen) => ({ label, labelOrder: naturalOrder(label), kind });

const taken = (label: string) => `a specimen's label must be unique in its study; “${label}” is taken.`;

type Row = Omit<Specimen, 'createdAt' | 'updatedAt'> & { createdAt: Date; updatedAt: Date };

function answer(row: Row): Specimen {
  return { ...row, createdAt: row.createdAt.toISOString(), updatedAt: row.updatedAt.toISOString() };
}
