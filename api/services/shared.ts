import { count, eq } from 'drizzle-orm';
import { shareComment } from '../../db/schema/schema.ts';
import { type ComparisonText, FIGURES, type FigureForm, type FigureLook } from '../contract/figure.ts';
import type { NewComment, ShareComment, SharedFigureFile, SharedTable } from '../contract/share.ts';
import type { Shared } from '../contract/shared.ts';
import { packBundle } from '../export/bundle/pack.ts';
import { type DrawnFile, drawPrepared } from '../export/figure-file.ts';
import { hasFigure, prepareSharedFigure, type SharedFigure } from '../export/share-figures.ts';
import { Failure } from './failure.ts';
import { openFrozen, openShare, openShareOf, type Visitor } from './share-open.ts';
import { payloadOf, toldOf } from './share-payload.ts';
import { tablesOf } from './share-tables.ts';
import { commentsOf } from './shares.ts';
import { createThrottle } from './throttle.ts';

export const sayings = createThrottle({ burst: 5, perMinute: 2 });
const MOST_COMMENTS = 500;

export async function readShared(visitor: Visitor): Promise<Shared> {
  const row = await openShare(visitor);
  const { id, comments, expiresAt, bundled } = row;
  const said = comments ? ((await commentsOf(visitor, [id])).get(id) ?? []) : [];
  return { ...toldOf(payloadOf(row), bundled), comments, expiresAt: expiresAt?.toISOString() ?? null, said };
}

export async function sharedFigure(
  visitor: Visitor,
  file: SharedFigureFile,
  look: FigureLook,
): Promise<DrawnFile> {
  const { payload } = await openFrozen(visitor);
  const [name, form] = file.split('.') as [SharedFigure, FigureForm];
  if (!hasFigure(payload, name)) throw new Failure('not found', `what is shared here has no figure ${name}.`);
  return drawPrepared(await prepareSharedFigure(payload, name, look), { form, width: look.width });
}

export async function sharedTable(visitor: Visitor, table: SharedTable): Promise<string> {
  const written = tablesOf((await openFrozen(visitor)).payload)[table];
  if (written === undefined) throw new Failure('not found', `what is shared here has no table ${table}.`);
  return written();
}

/** Everything frozen with a placement as one zip: what the owner's own bundle of it holds. */
export async function sharedBundle(visitor: Visitor): Promise<Uint8Array> {
  const { placement, text, data } = (await openShareOf(visitor, 'placement', true)).payload;
  if (data === null)
    throw new Failure(
      'not found',
      'the data behind this placement were not frozen with it, so there is no zip.',
    );
  const { name, note, version, createdAt, result } = placement;
  const bundled = { name, note, version, createdAt, request: result.request, result };
  return packBundle({ placement: bundled, data, text: inOrder(text) });
}

/** Captions in the order of their figures, which a database does not keep. */
const inOrder = (text: ComparisonText): ComparisonText => ({
  ...text,
  captions: Object.fromEntries(
    FIGURES.flatMap((name) => (name in text.captions ? [[name, text.captions[name]]] : [])),
  ) as ComparisonText['captions'],
});

export async function comment(visitor: Visitor, { name, text }: NewComment): Promise<ShareComment> {
  const { id, comments } = await openShare(visitor);
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
