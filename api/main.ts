import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { serve } from '@hono/node-server';
import { type Connection, openFolder, openServer } from '../db/connect.ts';
import { createApp } from './app.ts';
import { type Environment, readEnvironment } from './env.ts';
import { stopImports } from './services/import-job.ts';
import { dropLeftovers } from './services/import-leftovers.ts';
import { seedLookups } from './services/lookups.ts';

const PATIENCE = 5_000;

/**
 * Collect garbage once the heap has grown by half, not threefold: bringing in a large file then takes 150 MB less
 * and a sixth more time (measured; scripts/bench/import.ts).
 */
setFlagsFromString('--heap-growing-percent=50');

async function main(): Promise<void> {
  const env = readEnvironment(process.env);
  const connection = await connect(env);
  await seedLookups(connection.db);
  await dropLeftovers(connection.db, { alone: connection.kind === 'embedded' });
  const app = createApp({
    db: connection.db,
    pages: path.resolve(import.meta.dirname, '../dist/web'),
    outside: env.NEARSHERD_OUTSIDE,
  });
  const server = serve({ fetch: app.fetch, port: env.PORT, hostname: env.HOST }, ({ port }) =>
    announce(env, connection, port),
  );
  server.on('error', (error) => fail(error));

  let stopping = false;
  const stop = async () => {
    if (stopping) return;
    stopping = true;
    server.close();
    await Promise.race([stopImports(), pause(PATIENCE)]);
    if ('closeAllConnections' in server) server.closeAllConnections();
    await connection.close();
    process.exit(0);
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
}

async function connect(env: Environment): Promise<Connection> {
  if (env.DATABASE_URL !== undefined) return openServer(env.DATABASE_URL);
  return openFolder(env.NEARSHERD_DATA, (why) => {
    console.error(
      `The lock on ${env.NEARSHERD_DATA} was lost (${why.message}); stopping rather than risk the data.`,
    );
    process.exit(1);
  });
}

function announce(env: Environment, connection: Connection, port: number): void {
  const name = env.HOST.includes(':') ? `[${env.HOST}]` : env.HOST;
  const open = env.NEARSHERD_CONTAINER === '1' ? 'localhost' : name;
  console.log(`Nearsherd is at http://${open}:${port}`);
  console.log(
    `Data: ${connection.where} (${connection.kind === 'embedded' ? 'embedded database' : 'PostgreSQL'}).`,
  );
  console.log(
    env.NEARSHERD_CONTAINER === '1'
      ? 'There are no accounts yet: publish this container’s port on 127.0.0.1 only.'
      : 'There are no accounts yet, so it answers this computer only.',
  );
  if (env.NEARSHERD_OUTSIDE !== undefined)
    console.log(`What is shared, and nothing else, is also answered by the name ${env.NEARSHERD_OUTSIDE}.`);
}

function fail(error: unknown): never {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}

main().catch(fail);
