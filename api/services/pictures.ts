import { and, count, eq } from 'drizzle-orm';
import { picture, zone } from '../../db/schema/schema.ts';
import type { Picture, PictureChange, PictureQuery, PictureUpload } from '../contract/picture.ts';
import { requireOutline } from '../domain/colour/outline.ts';
import type { Grey } from '../domain/colour/types.ts';
import { MOST_PICTURE_BYTES } from '../intake/picture/limits.ts';
import { readPicture } from '../intake/picture/read-picture.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure, found } from './failure.ts';
import { firingRow } from './firings.ts';
import { pictureAnswer, pictureColumns } from './picture-rows.ts';
import { readTile } from './tiles.ts';

/** Of one tile or firing: a page shows them all. */
const MOST_PICTURES = 40;

export async function listPictures(caller: Caller, studyId: string, query: PictureQuery): Promise<Picture[]> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .select(pictureColumns)
    .from(picture)
    .where(
      and(
        eq(picture.studyId, studyId),
        query.tile ? eq(picture.tileId, query.tile) : undefined,
        query.firing ? eq(picture.firingId, query.firing) : undefined,
      ),
    )
    .orderBy(picture.createdAt, picture.id);
  return rows.map(pictureAnswer);
}

export async function readPictureOf(caller: Caller, studyId: string, id: string): Promise<Picture> {
  await requireStudy(caller, studyId);
  const [row] = await caller.db.select(pictureColumns).from(picture).where(one(studyId, id));
  return pictureAnswer(found(row, 'the picture'));
}

/** Keeps a picture of a tile or of a firing: its pixels and what is said of it, no place and no camera. */
export async function createPicture(caller: Caller, studyId: string, wish: PictureUpload): Promise<Picture> {
  await requireStudy(caller, studyId);
  const { file, tile: tileId = null, firing: firingId = null, caption, taken = null } = wish;
  if ((tileId === null) === (firingId === null))
    throw new Failure('invalid', 'a picture needs either a tile or a firing that it shows, and not both.');
  if (tileId) await readTile(caller, studyId, tileId);
  if (firingId) await firingRow(caller, studyId, firingId);
  const megabytes = file.size / 1024 ** 2;
  if (file.size > MOST_PICTURE_BYTES)
    throw new Failure(
      'too large',
      `a picture needs at most ${MOST_PICTURE_BYTES / 1024 ** 2} MB; this one has ${megabytes.toFixed(1)} MB.`,
    );
  await requireRoom(caller, { tileId, firingId });
  const read = readPicture(new Uint8Array(await file.arrayBuffer()), file.name);
  const [row] = await caller.db
    .insert(picture)
    .values({ ...read, studyId, tileId, firingId, caption, taken })
    .returning({ id: picture.id });
  return readPictureOf(caller, studyId, row!.id);
}

async function requireRoom({ db }: Caller, of: { tileId: string | null; firingId: string | null }) {
  const where = of.tileId ? eq(picture.tileId, of.tileId) : eq(picture.firingId, of.firingId!);
  const [row] = await db.select({ n: count() }).from(picture).where(where);
  if (row!.n >= MOST_PICTURES)
    throw new Failure(
      'invalid',
      `a tile or firing holds at most ${MOST_PICTURES} pictures; it has ${row!.n}.`,
    );
}

export async function changePicture(
  caller: Caller,
  studyId: string,
  { id, change }: { id: string; change: PictureChange },
): Promise<Picture> {
  await readPictureOf(caller, studyId, id);
  if (change.grey) requireOutline((change.grey as Grey).outline);
  const set = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
  if (Object.keys(set).length > 0) await caller.db.update(picture).set(set).where(one(studyId, id));
  return readPictureOf(caller, studyId, id);
}

/** Zones drawn on it lose their outline; what was measured in it stays with them. */
export async function deletePicture(caller: Caller, studyId: string, id: string): Promise<void> {
  await readPictureOf(caller, studyId, id);
  await caller.db.transaction(async (tx) => {
    await tx.update(zone).set({ pictureId: null, outline: null }).where(eq(zone.pictureId, id));
    await tx.delete(picture).where(one(studyId, id));
  });
}

/** The picture itself. */
export async function pictureFile(
  caller: Caller,
  studyId: string,
  id: string,
): Promise<{ readonly type: Picture['type']; readonly bytes: Uint8Array }> {
  await requireStudy(caller, studyId);
  const [row] = await caller.db
    .select({ type: picture.type, bytes: picture.bytes })
    .from(picture)
    .where(one(studyId, id));
  return found(row, 'the picture');
}

const one = (studyId: string, id: string) => and(eq(picture.studyId, studyId), eq(picture.id, id));
