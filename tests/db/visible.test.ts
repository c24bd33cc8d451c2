import { eq } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  analysis,
  dataImport,
  specimen,
  study,
  visibleAnalysis,
  visibleSpecimen,
  visibleWareGroup,
  wareGroup,
} from '../../db/schema/schema.ts';
import { type TestDatabase, testDatabase } from '../support/test-database.ts';

let database: TestDatabase;
beforeAll(async () => {
  database = await testDatabase();
});
afterAll(() => database.close());

const missing = { id: '' };

async function staged() {
  const { db } = database;
  const [{ id: studyId } = missing] = await db.insert(study).values({ name: 'S' }).returning();
  const values = { studyId, status: 'running', bytes: 1 } as const;
  const [{ id: importId } = missing] = await db.insert(dataImport).values(values).returning();
  const of = { studyId, importId };
  await db.insert(wareGroup).values({ ...of, name: 'G', position: 0 });
  const [{ id: specimenId } = missing] = await db
    .insert(specimen)
    .values({ ...of, label: 'A', labelOrder: 'a', kind: 'sherd' })
    .returning();
  await db.insert(analysis).values({ ...of, specimenId, measured: 'paint', reported: [] });
  return { studyId, importId };
}
const seen = async (studyId: string) => {
  const { db } = database;
  const groups = await db.select().from(visibleWareGroup).where(eq(visibleWareGroup.studyId, studyId));
  const specimens = await db.select().from(visibleSpecimen).where(eq(visibleSpecimen.studyId, studyId));
  const analyses = await db.select().from(visibleAnalysis).where(eq(visibleAnalysis.studyId, studyId));
  return [groups.length, specimens.length, analyses.length];
};

describe('rows that an import brings', () => {
  it.each(['running', 'failed', 'stopped'] as const)('are seen by nobody while it is %s', async (status) => {
    const { studyId, importId } = await staged();
    await database.db.update(dataImport).set({ status }).where(eq(dataImport.id, importId));
    expect(await seen(studyId)).toEqual([0, 0, 0]);
  });

  it('are seen all at once when it is done', async () => {
    const { studyId, importId } = await staged();
    await database.db.update(dataImport).set({ status: 'done' }).where(eq(dataImport.id, importId));
    expect(await seen(studyId)).toEqual([1, 1, 1]);
  });

  it('never become visible by the removal of their import', async () => {
    const { studyId, importId } = await staged();
    await database.db.delete(dataImport).where(eq(dataImport.id, importId));
    expect(await seen(studyId)).toEqual([0, 0, 0]);
    expect(await database.db.select().from(analysis).where(eq(analysis.studyId, studyId))).toEqual([]);
  });

  it('come from one import a study at a time', async () => {
    const { studyId } = await staged();
    const again = database.db.insert(dataImport).values({ studyId, status: 'running', bytes: 1 });
    await expect(again).rejects.toMatchObject({ cause: { code: '23505' } });
  });
});
