import { randomUUID } from 'node:crypto';
import postgres from 'postgres';
import { inject } from 'vitest';
import { seedLookups } from '../../api/services/lookups.ts';
import { type Connection, openMemory, openServer } from '../../db/connect.ts';
import { emptyCluster } from './empty-cluster.ts';

export const onServer = process.env.TEST_DRIVER === 'server';

export interface TestDatabase extends Connection {
  /** The server's address of this database; null on the embedded one. */
  readonly url: string | null;
}

/** A database nobody else uses, on whichever engine this run is for; `close` removes it. */
export async function testDatabase(): Promise<TestDatabase> {
  const database = onServer
    ? await onTheServer()
    : { ...(await openMemory(await emptyCluster())), url: null };
  await seedLookups(database.db);
  return database;
}

/** An empty database on the server, with no table in it yet. */
export async function emptyServerDatabase(): Promise<{ url: string; drop: () => Promise<void> }> {
  const base = inject('postgresUrl');
  const name = `test_${randomUUID().replaceAll('-', '')}`;
  await asAdministrator(base, (sql) => sql`create database ${sql(name)}`);
  const url = new URL(base);
  url.pathname = `/${name}`;
  const drop = () => asAdministrator(base, (sql) => sql`drop database if exists ${sql(name)} with (force)`);
  return { url: url.href, drop };
}

async function onTheServer(): Promise<TestDatabase> {
  const { url, drop } = await emptyServerDatabase();
  const connection = await openServer(url);
  const close = async () => {
    await connection.close();
    await drop();
  };
  return { ...connection, url, close };
}

async function asAdministrator(url: string, work: (sql: postgres.Sql) => Promise<unknown>): Promise<void> {
  const sql = postgres(url, { max: 1, onnotice: () => {} });
  try {
    await work(sql);
  } finally {
    await sql.end();
  }
}
