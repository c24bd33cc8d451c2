import { and, count, eq, gte, sql } from 'drizzle-orm';
import type { Transaction } from '../../db/connect.ts';
import { visibleAnalysis, visibleSpecimen, visibleWareGroup, wareGroup } from '../../db/schema/schema.ts';
import type { NewWareGroup, WareGroup, WareGroupChange } from '../contract/ware-group.ts';
import { type Caller, requireStudy } from './access.ts';
import { found, unlessTaken } from './failure.ts';

type Row = typeof wareGroup.$inferSelect;
type Counts = { specimens: number; analyses: number };

export async function listWareGroups(caller: Caller, studyId: string): Promise<WareGroup[]> {
  await requireStudy(caller, studyId);
  const counts = await countAll(caller, studyId);
  const rows = await caller.db
    .select()
    .from(visibleWareGroup)
    .where(eq(visibleWareGroup.studyId, studyId))
    .orderBy(visibleWareGroup.position, visibleWareGroup.name);
  return rows.map((row) => answer(row, counts.get(row.id)));
}

export async function createWareGroup(
  caller: Caller,
  studyId: string,
  wanted: NewWareGroup,
): Promise<WareGroup> {
  await requireStudy(caller, studyId);
  const position = sql<number>`(select coalesce(max(position) + 1, 0) from ware_group where study_id = ${studyId})`;
  const [row] = await unlessTaken(
    caller.db
      .insert(wareGroup)
      .values({ ...wanted, studyId, position })
      .returning(),
    taken(wanted.name),
  );
  return answer(row!, undefined);
}

export async function readWareGroup(caller: Caller, studyId: string, groupId: string): Promise<WareGroup> {
  const groups = await listWareGroups(caller, studyId);
  return found(
    groups.find((group) => group.id === groupId),
    'the ware group',
  );
}

export async function changeWareGroup(
  caller: Caller,
  studyId: string,
  { groupId, change }: { groupId: string; change: WareGroupChange },
): Promise<WareGroup> {
  await readWareGroup(caller, studyId, groupId);
  const { position, ...fields } = change;
  await caller.db.transaction(async (tx) => {
    await unlessTaken(
      tx
        .update(wareGroup)
        .set({ ...fields, updatedAt: new Date() })
        .where(eq(wareGroup.id, groupId)),
      taken(fields.name ?? ''),
    );
    if (position !== undefined) await moveTo(tx, studyId, { groupId, position });
  });
  return readWareGroup(caller, studyId, groupId);
}

/** Its specimens stay, without a ware group. */
export async function deleteWareGroup(caller: Caller, studyId: string, groupId: string): Promise<void> {
  const { position } = await readWareGroup(caller, studyId, groupId);
  await caller.db.transaction(async (tx) => {
    await tx.delete(wareGroup).where(eq(wareGroup.id, groupId));
    await tx
      .update(wareGroup)
      .set({ position: sql`${wareGroup.position} - 1` })
      .where(and(eq(wareGroup.studyId, studyId), gte(wareGroup.position, position)));
  });
}

async function moveTo(
  tx: Transaction,
  studyId: string,
  { groupId, position }: { groupId: string; position: number },
): Promise<void> {
  const rows = await tx
    .select({ id: wareGroup.id })
    .from(wareGroup)
    .where(eq(wareGroup.studyId, studyId))
    .orderBy(wareGroup.position, wareGroup.name);
  const others = rows.map((row) => row.id).filter((id) => id !== groupId);
  others.splice(position, 0, groupId);
  for (const [index, id] of others.entries())
    await tx.update(wareGroup).set({ position: index }).where(eq(wareGroup.id, id));
}

async function countAll(caller: Caller, studyId: string): Promise<Map<string | null, Counts>> {
  const rows = await caller.db
    .select({
      group: visibleSpecimen.wareGroupId,
      specimens: sql<number>`count(distinct ${visibleSpecimen.id})`.mapWith(Number),
      analyses: count(visibleAnalysis.id),
    })
    .from(visibleSpecimen)
    .leftJoin(visibleAnalysis, eq(visibleAnalysis.specimenId, visibleSpecimen.id))
    .where(eq(visibleSpecimen.studyId, studyId))
    .groupBy(visibleSpecimen.wareGroupId);
  return new Map(rows.map(({ group, ...counts }) => [group, counts]));
}

const taken = (name: string) => `a ware group's name must be unique in its study; “${name}” is taken.`;

function answer({ studyId: _study, importId: _import, ...row }: Row, counts: Counts | undefined): WareGroup {
  return {
    ...row,
    specimens: counts?.specimens ?? 0,
    analyses: counts?.analyses ?? 0,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  };
}
