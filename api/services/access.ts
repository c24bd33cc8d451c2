import { eq } from 'drizzle-orm';
import type { Database } from '../../db/connect.ts';
import { study } from '../../db/schema/schema.ts';
import { Failure } from './failure.ts';

/**
 * On whose behalf a service acts. There are no accounts yet and the service answers loopback only, so there is
 * one caller, who may do everything; a second kind of caller is added here and judged in `requireStudy`.
 */
export interface Caller {
  readonly db: Database;
  readonly who: 'local';
}

/** The one place where a caller's right to a study is asked. Every service that touches a study comes through here. */
export async function requireStudy(caller: Caller, studyId: string): Promise<typeof study.$inferSelect> {
  const [row] = await caller.db.select().from(study).where(eq(study.id, studyId));
  if (row === undefined)
    throw new Failure('not found', 'the study must exist; it does not, or it is not yours.');
  return row;
}
