import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { FrozenKind } from '../contract/shared.ts';
import { writeTables } from '../export/bundle/tables.ts';
import { type BuiltPage, writeShareFile } from '../export/share-file.ts';
import type { Caller } from './access.ts';
import { Failure } from './failure.ts';
import { freezePlacementShare } from './share-freeze.ts';
import { openFrozen, type Visitor } from './share-open.ts';
import { type FrozenPayload, toldOf } from './share-payload.ts';
import { tablesOf } from './share-tables.ts';

/** Folder of the built page; null where the pages were not built. */
type Built = string | null;

/** What is shared as one file, without what visitors said on it. */
export async function sharedFile(
  visitor: Visitor,
  built: Built,
): Promise<{ readonly file: string; readonly kind: FrozenKind }> {
  const { payload, expiresAt } = await openFrozen(visitor, true);
  const file = await fileOf(payload, { built, expiresAt: expiresAt?.toISOString() ?? null });
  return { file, kind: payload.kind };
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
  payload: FrozenPayload,
  { built, expiresAt }: { readonly built: Built; readonly expiresAt: string | null },
): Promise<string> {
  const page = await readBuilt(built);
  const shared = {
    ...toldOf(payload, 'data' in payload && payload.data !== null),
    comments: false,
    expiresAt,
    said: [],
  };
  return writeShareFile({ shared, tables: allTablesOf(payload) }, page);
}

/** All that a share gives as tables, and beside them what a placement was made from. */
function allTablesOf(payload: FrozenPayload): Record<string, string> {
  const written = Object.entries(tablesOf(payload)).map(([table, write]) => [table, write()] as const);
  const data = payload.kind === 'placement' ? payload.data : null;
  const reported = Object.entries(data === null ? {} : writeTables(data));
  return Object.fromEntries([
    ...written,
    ...reported.map(([table, csv]) => [`reported-${table}`, csv] as const),
  ]);
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
