import { and, eq, inArray } from 'drizzle-orm';
import { batch, firing, specimen, specimenBatch, tile, zone } from '../../db/schema/schema.ts';
import type { Picture } from '../contract/picture.ts';
import type { NewZone, Tile, ZoneRecord } from '../contract/tile.ts';
import type { Caller } from './access.ts';
import { picturesOf } from './picture-rows.ts';

/** Tiles of a study with their zones and pictures, all of them or some. */
export async function tilesWhere({ db }: Caller, studyId: string, ids?: readonly string[]): Promise<Tile[]> {
  const rows = await db
    .select({
      tile,
      label: specimen.label,
      order: specimen.labelOrder,
      notes: specimen.notes,
      firingName: firing.name,
      batch: batch.id,
      batchName: batch.name,
    })
    .from(tile)
    .innerJoin(specimen, eq(specimen.id, tile.specimenId))
    .leftJoin(firing, eq(firing.id, tile.firingId))
    .leftJoin(specimenBatch, eq(specimenBatch.specimenId, tile.specimenId))
    .leftJoin(batch, eq(batch.id, specimenBatch.batchId))
    .where(and(eq(tile.studyId, studyId), ids && inArray(tile.specimenId, [...ids])))
    .orderBy(specimen.labelOrder, tile.specimenId);
  const tileIds = rows.map((row) => row.tile.specimenId);
  const zones =
    tileIds.length === 0
      ? []
      : await db
          .select()
          .from(zone)
          .where(inArray(zone.tileId, tileIds))
          .orderBy(zone.tileId, zone.row, zone.column, zone.label);
  const pictures = await picturesOf(db, tileIds);
  return rows.map((row) => answer(row, zones, pictures));
}

type Row = Pick<Tile, 'label' | 'notes' | 'firingName' | 'batch' | 'batchName'> & {
  tile: typeof tile.$inferSelect;
};

function answer(
  row: Row,
  allZones: readonly (typeof zone.$inferSelect)[],
  pictures: readonly Picture[],
): Tile {
  const { specimenId: id, studyId: _, firingId, createdAt, updatedAt, ...kept } = row.tile;
  const zones = allZones.filter((each) => each.tileId === id).map(zoneAnswer);
  return {
    id,
    label: row.label,
    notes: row.notes,
    firing: firingId,
    firingName: row.firingName,
    batch: row.batch,
    batchName: row.batchName,
    ...kept,
    zones,
    pictures: pictures.filter((each) => each.tile === id),
    createdAt: createdAt.toISOString(),
    updatedAt: updatedAt.toISOString(),
  };
}

function zoneAnswer({ tileId: _, pictureId: picture, ...row }: typeof zone.$inferSelect): ZoneRecord {
  const { outline, measuredColour, defects } = row;
  return {
    ...{ ...row, picture, defects: [...defects] },
    outline: outline as ZoneRecord['outline'],
    measuredColour: measuredColour as ZoneRecord['measuredColour'],
  };
}

/** A zone as the database holds it. */
export function zoneRow(tileId: string, { picture: pictureId, ...fields }: NewZone) {
  return { ...fields, tileId, pictureId };
}

/** The fields that a change names. */
export const given = (change: object) =>
  Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
