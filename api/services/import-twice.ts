import { and, desc, eq } from 'drizzle-orm';
import type { Database } from '../../db/connect.ts';
import { dataImport } from '../../db/schema/schema.ts';
import type { ImportProblem } from '../contract/intake.ts';

/** A warning where the same file came in before: right for other columns or another sheet, else a double. */
export async function earlierImport(db: Database, studyId: string, sha256: string): Promise<ImportProblem[]> {
  const [earlier] = await db
    .select({ at: dataImport.createdAt, analyses: dataImport.analyses })
    .from(dataImport)
    .where(and(eq(dataImport.studyId, studyId), eq(dataImport.sha256, sha256), eq(dataImport.status, 'done')))
    .orderBy(desc(dataImport.createdAt))
    .limit(1);
  if (earlier === undefined) return [];
  const day = earlier.at.toISOString().slice(0, 10);
  const message = `This same file was brought in on ${day} with ${earlier.analyses} analyses; the same rows and columns would be in the study twice.`;
  return [{ severity: 'warning', code: 'twice', message, row: null, column: null }];
}
