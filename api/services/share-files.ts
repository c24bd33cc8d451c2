import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { COMPARISON_TABLES } from '../contract/placement.ts';
import { writeTables } from '../export/bundle/tables.ts';
import { type BuiltPage, writeShareFile } from '../export/share-file.ts';
import type { Caller } from './access.ts';
import { comparisonCsv } from './comparison-tables.ts';
import { Failure } from './failure.ts';
import { freezePlacementShare } from './share-freeze.ts';
import { openShareOf, type Visitor } from './share-open.ts';
import { type PlacementPayload, toldOf } from './share-payload.ts';

/** Folder of the built page; null where the pages were not built. */
type Built = string | null;

/** What is shared as one file, without what visitors said on it. */
export async function sharedFile(visitor: Visitor, built: Built): Promise<string> {
  const { payload, expiresAt } = await openShareOf(visitor, 'placement');
  return fileOf(payload, { built, expiresAt: expiresAt?.toISOString() ?? null });
}

/** A kept placement as one file, as a share of it would show it. */
export async function placementFile(
  caller: Caller,
  studyId: string,
  { placement, built }: { readonly placement: string; readonly built: Built },
): Promise<string> {
  const { payload } = await freezePlacementShare(caller, studyId, placement);
  return fileOf(payload, { built, expiresAt: null });
}

async function fileOf(
  payload: PlacementPayload,
  { built, expiresAt }: { readonly built: Built; readonly expiresAt: string | null },
): Promise<string> {
  const page = await readBuilt(built);
  const shared = { ...toldOf(payload), comments: false, expiresAt, said: [] };
  return writeShareFile({ shared, tables: tablesOf(payload) }, page);
}

function tablesOf({ placement, data }: PlacementPayload): Record<string, string> {
  const computed = COMPARISON_TABLES.map((table) => [table, comparisonCsv(placement.result, table)]);
  const reported = data === null ? [] : Object.entries(writeTables(data));
  return Object.fromEntries([...computed, ...reported.map(([table, csv]) => [`reported-${table}`, csv])]);
}

async function readBuilt(folder: Built): Promise<BuiltPage> {
  try {
    const [script, style] = await Promise.all(
      ['page.js', 'page.css'].map((name) => readFile(path.join(folder ?? '', name), 'utf8')),
    );
    return { script: script!, style: style! };
  } catch {
    throw new Failure('conflict', 'a page as one file needs the built pages; run `npm run build` first.');
  }
}
