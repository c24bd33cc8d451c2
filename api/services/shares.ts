import { and, asc, desc, eq, inArray, sql } from 'drizzle-orm';
import { share, shareComment } from '../../db/schema/schema.ts';
import type { NewShare, ShareComment as Said, Share, ShareMade } from '../contract/share.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure, found } from './failure.ts';
import { freezeShare } from './share-freeze.ts';
import { hashOf, newToken, stateOf } from './share-token.ts';

/** Lays something of a study open. The token is in this answer and nowhere else. */
export async function createShare(
  caller: Caller,
  studyId: string,
  { wish, outside }: { readonly wish: NewShare; readonly outside: string | null },
): Promise<ShareMade> {
  const comments = wish.kind === 'sheet' ? false : wish.comments;
  const expiresAt = endOf(wish);
  const { name, payload } = await freezeShare(caller, studyId, wish);
  const token = newToken();
  const tokenHash = hashOf(token);
  const [row] = await caller.db
    .insert(share)
    .values({ studyId, name, tokenHash, payload, comments, expiresAt })
    .returning(columns);
  const path = `/shared/${token}`;
  return { ...shown(row!, []), token, path, address: outside && outside + path };
}

/** A sheet can be written on, so its address always ends. */
const SHEET_SPAN = 3 * 86_400_000;
const MOST_SHEET_SPAN = 31 * 86_400_000;

function endOf(wish: NewShare): Date | null {
  const given = wish.expiresAt ? Date.parse(wish.expiresAt) : null;
  if (given !== null && given <= Date.now())
    throw new Failure('invalid', `a share must end after now; ${wish.expiresAt} is past.`);
  if (wish.kind !== 'sheet') return given === null ? null : new Date(given);
  if (given !== null && given > Date.now() + MOST_SHEET_SPAN)
    throw new Failure('invalid', `a sheet must end within 31 days; ${wish.expiresAt} is later.`);
  return new Date(given ?? Date.now() + SHEET_SPAN);
}

export async function listShares(caller: Caller, studyId: string): Promise<Share[]> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .select(columns)
    .from(share)
    .where(eq(share.studyId, studyId))
    .orderBy(desc(share.createdAt), share.id);
  const said = await commentsOf(
    caller,
    rows.map(({ id }) => id),
  );
  return rows.map((row) => shown(row, said.get(row.id) ?? []));
}

/** Closes a share for good. Its comments stay readable to its owner. */
export async function revokeShare(caller: Caller, studyId: string, shareId: string): Promise<Share> {
  await requireStudy(caller, studyId);
  const one = and(eq(share.studyId, studyId), eq(share.id, shareId));
  const [before] = await caller.db.select({ revokedAt: share.revokedAt }).from(share).where(one);
  const revokedAt = found(before, 'the share').revokedAt ?? new Date();
  const [row] = await caller.db.update(share).set({ revokedAt }).where(one).returning(columns);
  return shown(row!, (await commentsOf(caller, [shareId])).get(shareId) ?? []);
}

/** Removes a share with what was said on it. */
export async function deleteShare(caller: Caller, studyId: string, shareId: string): Promise<void> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .delete(share)
    .where(and(eq(share.studyId, studyId), eq(share.id, shareId)))
    .returning({ id: share.id });
  found(rows[0], 'the share');
}

const columns = {
  id: share.id,
  // The payload may be large: only its kind is read.
  kind: sql<Share['kind']>`coalesce(${share.payload}->>'kind', 'placement')`,
  name: share.name,
  comments: share.comments,
  expiresAt: share.expiresAt,
  revokedAt: share.revokedAt,
  createdAt: share.createdAt,
};
type Row = Pick<typeof share.$inferSelect, Exclude<keyof typeof columns, 'kind'>> & Pick<Share, 'kind'>;

const shown = (row: Row, said: Said[]): Share => ({
  ...{ id: row.id, kind: row.kind, name: row.name, state: stateOf(row), comments: row.comments, said },
  expiresAt: row.expiresAt?.toISOString() ?? null,
  revokedAt: row.revokedAt?.toISOString() ?? null,
  createdAt: row.createdAt.toISOString(),
});

/** What was said on some shares, oldest first. */
export async function commentsOf(
  { db }: Pick<Caller, 'db'>,
  shareIds: readonly string[],
): Promise<Map<string, Said[]>> {
  const said = new Map<string, Said[]>();
  if (shareIds.length === 0) return said;
  const rows = await db
    .select()
    .from(shareComment)
    .where(inArray(shareComment.shareId, [...shareIds]))
    .orderBy(asc(shareComment.createdAt), shareComment.id);
  for (const { id, shareId, name, text, createdAt } of rows) {
    const comment = { id, name, text, createdAt: createdAt.toISOString() };
    said.set(shareId, [...(said.get(shareId) ?? []), comment]);
  }
  return said;
}
