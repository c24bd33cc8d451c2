import { openDB } from 'idb';
import type { Upload } from '../../queries/imports.ts';

const STORE = 'uploads';
const opened = () =>
  openDB('nearsherd-intake', 1, {
    upgrade: (db) => {
      db.createObjectStore(STORE);
    },
  });

/** The upload a study was busy with, so that a reload loses neither the file nor what was settled about it. */
export async function readKept(study: string): Promise<Upload | null> {
  try {
    return ((await (await opened()).get(STORE, study)) as Upload | undefined) ?? null;
  } catch {
    return null;
  }
}

export async function keep(study: string, upload: Upload | null): Promise<void> {
  try {
    const db = await opened();
    if (upload) await db.put(STORE, upload, study);
    else await db.delete(STORE, study);
  } catch {
    // A browser that keeps nothing: the page works, only a reload would lose the file.
  }
}
