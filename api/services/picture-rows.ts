import { inArray } from 'drizzle-orm';
import type { Database } from '../../db/connect.ts';
import { picture } from '../../db/schema/schema.ts';
import type { Picture } from '../contract/picture.ts';

/** Everything but the bytes, which are read one picture at a time. */
export const pictureColumns = {
  id: picture.id,
  tile: picture.tileId,
  firing: picture.firingId,
  type: picture.type,
  width: picture.width,
  height: picture.height,
  caption: picture.caption,
  taken: picture.taken,
  grey: picture.grey,
  createdAt: picture.createdAt,
};

export async function picturesOf(db: Database, tiles: readonly string[]): Promise<Picture[]> {
  if (tiles.length === 0) return [];
  const rows = await db
    .select(pictureColumns)
    .from(picture)
    .where(inArray(picture.tileId, [...tiles]))
    .orderBy(picture.createdAt, picture.id);
  return rows.map(pictureAnswer);
}

export function pictureAnswer<Row extends { readonly grey: unknown; readonly createdAt: Date }>(row: Row) {
  return { ...row, grey: row.grey as Picture['grey'], createdAt: row.createdAt.toISOString() };
}
