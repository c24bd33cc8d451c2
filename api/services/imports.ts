import { and, desc, eq, exists, inArray, isNull, ne, or, sql } from 'drizzle-orm';
import { analysis, dataImport, specimen, wareGroup } from '../../db/schema/schema.ts';
import type { DataImport, ImportOutcome } from '../contract/import.ts';
import { type Caller, requireStudy } from './access.ts';
import { found } from './failure.ts';
import { stopJob } from './import-job.ts';
import { dropLeftovers, dropRows } from './import-leftovers.ts';

type Row = typeof dataImport.$inferSelect;
const TAKEN_BACK: ImportOutcome = { message: 'The import was taken back.', problems: [] };

export async function listImports(caller: Caller, studyId: string): Promise<DataImport[]> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .select()
    .from(dataImport)
    .where(eq(dataImport.studyId, studyId))
    .orderBy(desc(dataImport.createdAt), dataImport.id);
  return rows.map(answer);
}

export async function readImport(caller: Caller, studyId: string, importId: string): Promise<DataImport> {
  await requireStudy(caller, studyId);
  const row = await one(caller, studyId, importId);
  if (row.status !== 'running') return answer(row);
  await dropLeftovers(caller.db, { alone: false });
  return answer(await one(caller, studyId, importId));
}

/** Stops an import under way, or takes back one that is done. Either way nothing of it is left to be seen. */
export async function endImport(caller: Caller, studyId: string, importId: string): Promise<void> {
  await requireStudy(caller, studyId);
  const { status } = await one(caller, studyId, importId);
  if (status === 'running') await stopJob(importId);
  if (status === 'running' || status === 'done') await takeBack(caller, importId);
}

/** Unpublishes in one small transaction, then clears up. What others have built upon stays. */
async function takeBack({ db }: Caller, importId: string): Promise<void> {
  await db.transaction(async (tx) => {
    const elsewhere = tx
      .select({ one: sql`1` })
      .from(analysis)
      .where(
        and(
          eq(analysis.specimenId, specimen.id),
          or(isNull(analysis.importId), ne(analysis.importId, importId)),
        ),
      );
    const others = tx
      .select({ one: sql`1` })
      .from(specimen)
      .where(
        and(
          eq(specimen.wareGroupId, wareGroup.id),
          or(isNull(specimen.importId), ne(specimen.importId, importId)),
        ),
      );
    await tx
      .update(specimen)
      .set({ importId: null })
      .where(and(eq(specimen.importId, importId), exists(elsewhere)));
    await tx
      .update(wareGroup)
      .set({ importId: null })
      .where(and(eq(wareGroup.importId, importId), exists(others)));
    await tx
      .update(dataImport)
      .set({ status: 'stopped', outcome: TAKEN_BACK, finishedAt: new Date() })
      .where(and(eq(dataImport.id, importId), inArray(dataImport.status, ['done', 'running'])));
  });
  await dropRows(db, importId);
}

async function one({ db }: Caller, studyId: string, importId: string): Promise<Row> {
  const [row] = await db
    .select()
    .from(dataImport)
    .where(and(eq(dataImport.studyId, studyId), eq(dataImport.id, importId)));
  return found(row, 'the import');
}

function answer({ studyId: _study, heartbeatAt: _beat, ...row }: Row): DataImport {
  return {
    ...row,
    outcome: row.outcome as ImportOutcome | null,
    createdAt: row.createdAt.toISOString(),
    finishedAt: row.finishedAt?.toISOString() ?? null,
  };
}
