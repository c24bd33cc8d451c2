import { and, eq, inArray, sql } from 'drizzle-orm';
import { type Zippable, zipSync } from 'fflate';
import { picture } from '../../db/schema/schema.ts';
import type { Entry, NotebookQuery } from '../contract/notebook.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure } from './failure.ts';
import { notebookTable, readNotebook } from './notebook.ts';
import { notebookPage } from './notebook-html.ts';

/** It is put together in memory. */
const MOST_BYTES = 200 * 1024 ** 2;

/** The notebook to take away: a table, a page to read, and the pictures as files. */
export async function notebookZip(
  caller: Caller,
  studyId: string,
  query: NotebookQuery,
): Promise<Uint8Array> {
  const { name } = await requireStudy(caller, studyId);
  const entries = await readNotebook(caller, studyId, query);
  const files = pictureFiles(entries);
  await requireRoom(caller, studyId, [...files.keys()]);
  const named = (id: string) => files.get(id);
  const zip: Zippable = {
    'notebook.csv': new TextEncoder().encode(notebookTable(entries, named)),
    'notebook.html': new TextEncoder().encode(notebookPage(name, entries, named)),
  };
  // Pictures are packed already.
  for (const [id, file] of files) zip[file] = [await bytesOf(caller, studyId, id), { level: 0 }];
  return zipSync(zip);
}

/** `pictures/2026-03-07 tile Tile 5 1.jpeg`: sorted by day, told apart, safe on every disk. */
function pictureFiles(entries: readonly Entry[]): Map<string, string> {
  const files = new Map<string, string>();
  const taken = new Set<string>();
  for (const { date, kind, title, pictures } of entries)
    for (const { id, type } of pictures) {
      const stem = `${date} ${kind} ${title}`.replace(/[^\p{L}\p{N} ._-]+/gu, '_').slice(0, 100);
      let n = 1;
      const name = () => `pictures/${stem} ${n}.${type.slice('image/'.length)}`;
      while (taken.has(name().toLowerCase())) n++;
      taken.add(name().toLowerCase());
      files.set(id, name());
    }
  return files;
}

async function requireRoom({ db }: Caller, studyId: string, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return;
  const [row] = await db
    .select({ bytes: sql<string>`coalesce(sum(octet_length(${picture.bytes})), 0)` })
    .from(picture)
    .where(and(eq(picture.studyId, studyId), inArray(picture.id, [...ids])));
  const megabytes = Number(row!.bytes) / 1024 ** 2;
  if (Number(row!.bytes) > MOST_BYTES)
    throw new Failure(
      'too large',
      `a notebook to take away needs at most ${MOST_BYTES / 1024 ** 2} MB of pictures; this one has ${Math.ceil(megabytes)} MB. Search for a part of it.`,
    );
}

async function bytesOf({ db }: Caller, studyId: string, id: string): Promise<Uint8Array> {
  const [row] = await db
    .select({ bytes: picture.bytes })
    .from(picture)
    .where(and(eq(picture.studyId, studyId), eq(picture.id, id)));
  return new Uint8Array(row!.bytes);
}
