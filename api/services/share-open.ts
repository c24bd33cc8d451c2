import { eq, getTableColumns, sql } from 'drizzle-orm';
import type { Database } from '../../db/connect.ts';
import { share } from '../../db/schema/schema.ts';
import { Failure } from './failure.ts';
import { type FrozenPayload, type KindOfShare, type PayloadOf, payloadOf } from './share-payload.ts';
import { hashOf, stateOf } from './share-token.ts';
import { createThrottle } from './throttle.ts';

/** Tries of a token that no share has: the next are answered with a refusal until the bucket fills again. */
export const guesses = createThrottle({ burst: 20, perMinute: 10 });

/** A visitor: a database, where they come from, and the token they hold. Nothing else of the study is theirs. */
export interface Visitor {
  readonly db: Database;
  readonly address: string;
  readonly token: string;
}
export type OpenShare = typeof share.$inferSelect & { readonly bundled: boolean };

/** What a placement was made from may be larger than all else of it, and only its files need it. */
const WHOLE = {
  ...getTableColumns(share),
  bundled: sql<boolean>`coalesce(jsonb_typeof(${share.payload} -> 'data') = 'object', false)`,
};
const WITHOUT_DATA = { ...WHOLE, payload: sql<unknown>`${share.payload} - 'data'` };

/** The share a token opens. Unknown tokens are all answered alike, and only so many times. */
export async function openShare({ db, address, token }: Visitor, withData = false): Promise<OpenShare> {
  if (!guesses.allows(address))
    throw new Failure('too many', 'too many addresses that lead nowhere were tried; try again in a minute.');
  // Looked up by the hash: the time this takes says nothing of how near a guess came.
  const [row] = await db
    .select(withData ? WHOLE : WITHOUT_DATA)
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

const NOTHING_SUCH = 'what is shared here has nothing of this sort.';

/** The same where a live sheet, of which nothing is frozen, cannot answer. */
export async function openFrozen(
  visitor: Visitor,
  withData = false,
): Promise<OpenShare & { readonly payload: FrozenPayload }> {
  const row = await openShare(visitor, withData);
  const payload = payloadOf(row);
  if (payload.kind === 'sheet') throw new Failure('not found', NOTHING_SUCH);
  return { ...row, payload };
}

/** The same where only one kind of thing can answer; a share of another kind has nothing of the sort. */
export async function openShareOf<Kind extends KindOfShare>(
  visitor: Visitor,
  kind: Kind,
  withData = false,
): Promise<OpenShare & { readonly payload: PayloadOf<Kind> }> {
  const row = await openShare(visitor, withData);
  const payload = payloadOf(row);
  if (payload.kind !== kind) throw new Failure('not found', NOTHING_SUCH);
  return { ...row, payload: payload as PayloadOf<Kind> };
}
