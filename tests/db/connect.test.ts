import { sql } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openServer } from '../../db/connect.ts';
import { analyte, study } from '../../db/schema/schema.ts';
import { emptyServerDatabase, onServer, type TestDatabase, testDatabase } from '../support/test-database.ts';

let database: TestDatabase;
beforeAll(async () => {
  database = await testDatabase();
});
afterAll(() => database.close());

describe('a connection', () => {
  it('has all tables and its lookups', async () => {
    expect(await database.db.select().from(study)).toEqual([]);
    const analytes = await database.db.select().from(analyte).orderBy(analyte.position);
    expect(analytes.map((one) => one.symbol)).toEqual(
      expect.arrayContaining(['SiO2', 'PbO', 'Pb', 'LOI', 'Total']),
    );
  });

  it('never shows a password', () => {
    expect(database.where).not.toContain('nearsherd:');
  });

  if (onServer)
    it('lets several processes start on an empty server at once, and migrates once', async () => {
      const { url, drop } = await emptyServerDatabase();
      const connections = await Promise.all([openServer(url), openServer(url), openServer(url)]);
      const rows = await connections[0]!.db.execute(
        sql`select count(*)::int as n from drizzle.__drizzle_migrations`,
      );
      await Promise.all(connections.map((one) => one.close()));
      await drop();
      expect(JSON.parse(JSON.stringify(rows))[0].n).toBeGreaterThan(0);
    });
});
