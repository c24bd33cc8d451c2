import { readFile } from 'node:fs/promises';
import { eq, sql } from 'drizzle-orm';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { plan, specimen, study, tile } from '../../db/schema/schema.ts';
import { type TestDatabase, testDatabase } from '../support/test-database.ts';

let database: TestDatabase;
beforeAll(async () => {
  database = await testDatabase();
});
afterAll(() => database.close());

async function tileAt(studyId: string, label: string, place: string) {
  const [one] = await database.db
    .insert(specimen)
    .values({ studyId, label, labelOrder: label, catalogueOrder: '', kind: 'replica' })
    .returning();
  const of = { specimenId: one!.id, studyId, place, rows: 1, columns: 1, settings: {} };
  await database.db.insert(tile).values(of);
}

it('place numbers that a plan drew move out of the factor; what was typed stays', async () => {
  const { db } = database;
  const [one] = await db.insert(study).values({ name: 'S' }).returning();
  const [other] = await db.insert(study).values({ name: 'Other' }).returning();
  const tiles = [
    { label: 'T1', place: '2' },
    { label: 'T2', place: '1' },
  ];
  await db.insert(plan).values({ studyId: one!.id, name: 'P', plan: { tiles } });
  await tileAt(one!.id, 'L-T1', '2');
  await tileAt(one!.id, 'L-T2', '3');
  await tileAt(one!.id, 'Shelf', '1');
  await tileAt(one!.id, 'M-T2', 'front');
  await tileAt(other!.id, 'L-T1', '2');
  const file = await readFile(new URL('../../db/migrations/0007_tile_position.sql', import.meta.url), 'utf8');
  await db.execute(sql.raw(file.split('--> statement-breakpoint')[1]!));
  const rows = await db
    .select({ study: study.name, label: specimen.label, place: tile.place, position: tile.position })
    .from(tile)
    .innerJoin(specimen, eq(specimen.id, tile.specimenId))
    .innerJoin(study, eq(study.id, tile.studyId))
    .orderBy(study.name, specimen.label);
  expect(rows.map((row) => [row.study, row.label, row.place, row.position])).toEqual([
    ['Other', 'L-T1', '2', null],
    ['S', 'L-T1', '', 2],
    ['S', 'L-T2', '3', null],
    ['S', 'M-T2', 'front', null],
    ['S', 'Shelf', '1', null],
  ]);
});
