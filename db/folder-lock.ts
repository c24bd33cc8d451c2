import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import lockfile from 'proper-lockfile';

/** The owner touches the lock every second; this long without a touch means that it died, whatever its id says. */
const SILENCE = 15_000;
/** The same when the owner's process is known to be gone. */
const SHORT_SILENCE = 2_000;
/** Two processes that take over one dead owner's lock see each other within this time. */
const CLASH_SHOWS = 1_500;

/** A data folder that another process holds. */
export class FolderInUse extends Error {
  override readonly name = 'FolderInUse';
}

/** Folders this process holds. A container that restarts has the same process id as in its earlier life. */
const ours = new Set<string>();

interface Owner {
  readonly pid: number;
  readonly host: string;
}

/**
 * Takes a data folder for this process alone. The embedded database would let a second process in and lose what
 * it writes. A lock left by a killed process is taken over.
 */
export async function lockFolder(folder: string, onLost: (why: Error) => void): Promise<() => Promise<void>> {
  await mkdir(folder, { recursive: true }).catch((error: Error) => {
    throw new Error(`the data folder must be one that can be made and written to; ${error.message}`);
  });
  const held = await lockfile.check(folder, { ...place(folder), stale: SHORT_SILENCE });
  const left = await ownerOf(folder);
  if (held && left && isAlive(folder, left)) throw inUse(folder, left);
  if (left && isAlive(folder, left) && (await wakesUp(folder))) throw inUse(folder, left);
  const release = await take(folder, left, onLost);
  await writeFile(ownerFile(folder), JSON.stringify({ pid: process.pid, host: hostname() }));
  ours.add(folder);
  return async () => {
    ours.delete(folder);
    await release();
  };
}

async function take(folder: string, left: Owner | null, onLost: (why: Error) => void) {
  const gone = left !== null && left.host === hostname() && !isAlive(folder, left);
  let lost: Error | null = null;
  let settled = false;
  const existed = await lockfile.check(folder, { ...place(folder), stale: 1e12 });
  const release = await lockfile
    .lock(folder, {
      ...place(folder),
      stale: gone ? SHORT_SILENCE : SILENCE,
      update: 1_000,
      retries: gone ? { retries: 8, minTimeout: 500, maxTimeout: 500 } : 0,
      onCompromised: (why) => {
        lost = why;
        if (settled) onLost(why);
      },
    })
    .catch((error: { code?: string }) => {
      throw error.code === 'ELOCKED' ? inUse(folder, left) : error;
    });
  if (existed) await pause(CLASH_SHOWS);
  if (lost) throw inUse(folder, null);
  settled = true;
  return release;
}

/** A stopped or suspended owner is alive though silent: give it time to touch its lock again. */
async function wakesUp(folder: string): Promise<boolean> {
  await pause(CLASH_SHOWS);
  return lockfile.check(folder, { ...place(folder), stale: SHORT_SILENCE });
}

const place = (folder: string) => ({ lockfilePath: path.join(folder, 'in-use') });
const ownerFile = (folder: string) => path.join(folder, 'owner.json');

async function ownerOf(folder: string): Promise<Owner | null> {
  try {
    return JSON.parse(await readFile(ownerFile(folder), 'utf8')) as Owner;
  } catch {
    return null;
  }
}

function isAlive(folder: string, owner: Owner): boolean {
  if (owner.host !== hostname()) return false;
  if (owner.pid === process.pid) return ours.has(folder);
  try {
    process.kill(owner.pid, 0);
    return true;
  } catch (error) {
    return (error as { code?: string }).code === 'EPERM';
  }
}

function inUse(folder: string, owner: Owner | null): FolderInUse {
  const by = owner ? ` (process ${owner.pid} on ${owner.host})` : '';
  return new FolderInUse(
    `the data folder must belong to one process; ${folder} is in use by another${by}. ` +
      'Stop that one, give this one its own folder in NEARSHERD_DATA, or let both use a PostgreSQL server through DATABASE_URL.',
  );
}
