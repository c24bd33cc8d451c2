import { count, eq } from 'drizzle-orm';
import type { Database } from '../../db/connect.ts';
import { share, shareComment } from '../../db/schema/schema.ts';
import type { FigureFile, FigureLook } from '../contract/figure.ts';
import type { ComparisonTable } from '../contract/placement.ts';
import type { NewComment, ShareComment, Shared } from '../contract/share.ts';
import { type DrawnFile, drawFigureFile } from '../export/figure-file.ts';
import { comparisonCsv } from './comparison-tables.ts';
import { Failure } from './failure.ts';
import { commentsOf, hashOf, stateOf } from './shares.ts';
import { createThrottle } from './throttle.ts';

/** Tries of a token that no share has: the next are answered with a refusal until the bucket fills again. */
export const guesses = createThrottle({ burst: 20, perMinute: 10 });
export const sayings = createThrottle({ burst: 5, perMinute: 2 });
const MOST_COMMENTS = 500;

/** A visitor: a database, where they come from, and the token they hold. Nothing else of the study is theirs. */
export interface Visitor {
  readonly db: Database;
  readonly address: string;
  readonly token: string;
}
type Payload = Pick<Shared, 'placement' | 'text'>;

export async function readShared(visitor: Visitor): Promise<Shared> {
  const { id, payload, comments, expiresAt } = await opened(visitor);
  const said = comments ? ((await commentsOf(visitor, [id])).get(id) ?? []) : [];
  return { ...(payload as Payload), comments, expiresAt: expiresAt?.toISOString() ?? null, said };
}

export async function sharedFigure(visitor: Visitor, file: FigureFile, look: FigureLook): Promise<DrawnFile> {
  const { payload } = await opened(visitor);
  return drawFigureFile((payload as Payload).placement.result, file, look);
}

export async function sharedTable(visitor: Visitor, table: ComparisonTable): Promise<string> {
  const { payload } = await opened(visitor);
  return comparisonCsv((payload as Payload).placement.result, table);
}

export async function comment(visitor: Visitor, { name, text }: NewComment): Promise<ShareComment> {
  const { id, comments } = await opened(visitor);
  if (!comments) throw new Failure('refused', 'whoever shared this takes no comments on it.');
  if (!sayings.allows(visitor.address))
    throw new Failure('too many', 'comments are taken a few at a time; try again in a minute.');
  sayings.spend(visitor.address);
  const [said] = await visitor.db
    .select({ n: count() })
    .from(shareComment)
    .where(eq(shareComment.shareId, id));
  if (said!.n >= MOST_COMMENTS)
    throw new Failure('refused', `a share takes at most ${MOST_COMMENTS} comments; this one has them.`);
  const [row] = await visitor.db.insert(shareComment).values({ shareId: id, name, text }).returning();
  return { id: row!.id, name, text, createdAt: row!.createdAt.toISOString() };
}

/** The share a token opens. Unknown tokens are all answered alike, and only so many times. */
async function opened({ db, address, token }: Visitor): Promise<typeof share.$inferSelect> {
  if (!guesses.allows(address))
    throw new Failure('too many', 'too many addresses that lead nowhere were tried; try again in a minute.');
  // Looked up by the hash: the time this takes says nothing of how near a guess came.
  const [row] = await db
    .select()
    .from(share)
    .where(eq(share.tokenHash, hashOf(token)));
  if (row === undefined) {
    guesses.spend(address);
    throw new Failure('not found', 'nothing is shared at this address.');
  }
  const state = stateOf(row);
  if (state === 'revoked') throw new Failure('gone', 'whoever shared this has taken it back.');
  if (state === 'expired')
    throw new Failure('gone', `this was shared until ${row.expiresAt!.toISOString().slice(0, 10)}.`);
  return row;
}
