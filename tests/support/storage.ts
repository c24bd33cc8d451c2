import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type Connection, openFolder, openServer } from '../../db/connect.ts';
import { emptyServerDatabase, onServer } from './test-database.ts';

/** A place for one service's data, on whichever engine this run is for. */
export interface Storage {
  readonly env: Record<string, string>;
  /** Looks at the data from outside; the embedded folder only while no process holds it. */
  readonly open: () => Promise<Connection>;
  readonly remove: () => Promise<void>;
}

export async function newStorage(): Promise<Storage> {
  if (onServer) {
    const { url, drop } = await emptyServerDatabase();
    return { env: { DATABASE_URL: url }, open: () => openServer(url), remove: drop };
  }
  const folder = await mkdtemp(path.join(tmpdir(), 'nearsherd-test-'));
  return {
    env: { NEARSHERD_DATA: folder },
    open: () => openFolder(folder),
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}
