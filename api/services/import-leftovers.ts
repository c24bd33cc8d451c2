import { and, eq, inArray, lt, sql } from 'drizzle-orm';
import type { Database } from '../../db/connect.ts';
import { analysis, dataImport, specimen, wareGroup } from '../../db/schema/schema.ts';

/** A running import says that it lives at least this often; after this silence it is taken for dead. */
export const HEARTBEAT = 5_000;
const SILENCE = sql`now() - interval '30 seconds'`;
const BATCH = 500;
const DIED = {
  message:
    'The service stopped while the file was being brought in. Nothing of it was kept; bring it in again.',
  problems: [],
};

/**
 * Removes what imports left that died on their way. On the embedded database (`alone`) nobody else can be at work,
 * so every running import is dead; on a server only those that fell silent.
 */
export async function dropLeftovers(db: Database, { alone }: { alone: boolean }): Promise<void> {
  const dead = await db
    .update(dataImport)
    .set({ status: 'failed', outcome: DIED, finishedAt: new Date() })
    .where(and(eq(dataImport.status, 'running'), alone ? undefined : lt(dataImport.heartbeatAt, SILENCE)))
    .returning({ id: dataImport.id });
  for (const { id } of dead) await dropRows(db, id);
  await dropUnpublished(db);
}

/** Removes all rows of an import that is not (or no longer) published, a few at a time. */
export async function dropRows(db: Database, importId: string): Promise<void> {
  for (const table of [analysis, specimen, wareGroup]) {
    const some = db.select({ id: table.id }).from(table).where(eq(table.importId, importId)).limit(BATCH);
    for (;;) {
      const gone = await db.delete(table).where(inArray(table.id, some)).returning({ id: table.id });
      if (gone.length < BATCH) break;
    }
  }
}

/** A removal that was itself cut short is finished here. */
async function dropUnpublished(db: Database): Promise<void> {
  for (const table of [analysis, specimen, wareGroup]) {
    const ended = await db
      .selectDistinct({ id: dataImport.id })
      .from(dataImport)
      .innerJoin(table, eq(table.importId, dataImport.id))
      .where(inArray(dataImport.status, ['failed', 'stopped']));
    for (const { id } of ended) await dropRows(db, id);
  }
}
