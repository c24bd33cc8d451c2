import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { PGlite } from '@electric-sql/pglite';
import { sql } from 'drizzle-orm';
import type { PgDatabase, PgQueryResultHKT } from 'drizzle-orm/pg-core';
import { drizzle as embedded } from 'drizzle-orm/pglite';
import { migrate as migrateEmbedded } from 'drizzle-orm/pglite/migrator';
import { drizzle as server } from 'drizzle-orm/postgres-js';
import { migrate as migrateServer } from 'drizzle-orm/postgres-js/migrator';
import postgres from 'postgres';
import { lockFolder } from './folder-lock.ts';
import * as schema from './schema/schema.ts';

/** One type for both drivers. */
export type Database = PgDatabase<PgQueryResultHKT, typeof schema>;
export type Transaction = Parameters<Parameters<Database['transaction']>[0]>[0];

export interface Connection {
  readonly db: Database;
  readonly kind: 'embedded' | 'server';
  /** Where the data are, fit to be shown: a folder, or a server's address without its password. */
  readonly where: string;
  readonly close: () => Promise<void>;
}

const run = promisify(execFile);
/** A page cache of 128 MB, PGlite's own choice, is a quarter of what the whole service may take. */
const lean = { startParams: [...PGlite.defaultStartParams, '-c', 'shared_buffers=32MB'] };
const settings = { schema, casing: 'snake_case' } as const;
const migrations = { migrationsFolder: path.join(import.meta.dirname, 'migrations') };
/** Any number will do, as long as every process asks for the same. */
const MIGRATION_LOCK = 8_470_001;

/** Opens the embedded database in a folder, for this process alone, and brings its tables up to date. */
export async function openFolder(
  folder: string,
  onLost: (why: Error) => void = () => process.exit(1),
): Promise<Connection> {
  const release = await lockFolder(folder, onLost);
  try {
    const client = await PGlite.create(await clusterIn(folder), lean);
    const db = embedded({ client, ...settings });
    await migrateEmbedded(db, migrations);
    const close = async () => {
      await client.close();
      await release();
    };
    return { db, kind: 'embedded', where: folder, close };
  } catch (error) {
    await release();
    throw error;
  }
}

/** The database's own folder, made when it is not there; one that was killed in the making is made anew. */
async function clusterIn(folder: string): Promise<string> {
  const cluster = path.join(folder, 'database');
  if (existsSync(cluster)) return cluster;
  const unfinished = path.join(folder, 'database-unfinished');
  await rm(unfinished, { recursive: true, force: true });
  await run(process.execPath, [path.join(import.meta.dirname, 'make-cluster.mjs'), unfinished]);
  await rename(unfinished, cluster);
  return cluster;
}

/** An embedded database that is forgotten when the process ends; made from the dump of an empty one if given. */
export async function openMemory(empty?: Blob): Promise<Connection> {
  const client = await PGlite.create('memory://', { ...lean, ...(empty ? { loadDataDir: empty } : {}) });
  const db = embedded({ client, ...settings });
  await migrateEmbedded(db, migrations);
  return { db, kind: 'embedded', where: 'memory', close: () => client.close() };
}

/** Connects to a PostgreSQL server; several processes may start at once and one of them migrates. */
export async function openServer(url: string): Promise<Connection> {
  await migrateOnce(url);
  const client = postgres(url, { max: 10, onnotice: () => {} });
  const db = server({ client, ...settings });
  return { db, kind: 'server', where: shown(url), close: () => client.end({ timeout: 5 }) };
}

async function migrateOnce(url: string): Promise<void> {
  const client = postgres(url, { max: 1, onnotice: () => {} });
  try {
    const db = server({ client, ...settings });
    await client`select 1`.catch((error: Error & { code?: string }) => {
      throw new Error(
        `a PostgreSQL server must answer at ${shown(url)}; ${error.code ?? ''} ${error.message}`,
      );
    });
    await db.execute(sql`select pg_advisory_lock(${MIGRATION_LOCK})`);
    await migrateServer(db, migrations);
    await db.execute(sql`select pg_advisory_unlock(${MIGRATION_LOCK})`);
  } finally {
    await client.end({ timeout: 5 });
  }
}

function shown(url: string): string {
  const { protocol, host, pathname } = new URL(url);
  return `${protocol}//${host}${pathname}`;
}
