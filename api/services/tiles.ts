import { and, eq, inArray } from 'drizzle-orm';
import type { Transaction } from '../../db/connect.ts';
import { batch, firing, specimen, specimenBatch, tile, zone } from '../../db/schema/schema.ts';
import type { Picture } from '../contract/picture.ts';
import {
  MOST_ZONES,
  type NewTile,
  type NewZone,
  type Tile,
  type TileChange,
  type ZoneChange,
  type ZoneRecord,
} from '../contract/tile.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure, found, unlessTaken } from './failure.ts';
import { firingRow } from './firings.ts';
import { naturalOrder } from './natural-order.ts';
import { picturesOf } from './picture-rows.ts';
import { emptyGrid, requireDrawn, requireGrid } from './zone-grid.ts';

export async function listTiles(caller: Caller, studyId: string): Promise<Tile[]> {
  await requireStudy(caller, studyId);
  return tilesWhere(caller, studyId);
}

export async function readTile(caller: Caller, studyId: string, id: string): Promise<Tile> {
  await requireStudy(caller, studyId);
  const [only] = await tilesWhere(caller, studyId, [id]);
  return found(only, 'the tile');
}

export async function createTile(caller: Caller, studyId: string, wish: NewTile): Promise<Tile> {
  await requireStudy(caller, studyId);
  if (wish.firing !== null) await firingRow(caller, studyId, wish.firing);
  const replica = await replicaFor(caller, studyId, wish);
  const id = await unlessTaken(
    caller.db.transaction((tx) => insertTile(tx, studyId, { ...wish, ...replica })),
    wish.specimen === undefined
      ? `a tile's label must be unique among the specimens; “${wish.label}” is taken.`
      : 'a replica must not hold zones yet; this one does.',
  );
  return readTile(caller, studyId, id);
}

async function replicaFor(caller: Caller, studyId: string, { specimen: id, label }: NewTile) {
  if ((id === undefined) === (label === undefined))
    throw new Failure('invalid', 'a tile needs either a replica that is there or a label for a new one.');
  if (id === undefined) return { label: label! };
  const [row] = await caller.db
    .select({ kind: specimen.kind })
    .from(specimen)
    .where(and(eq(specimen.studyId, studyId), eq(specimen.id, id)));
  if (found(row, 'the replica').kind !== 'replica')
    throw new Failure('invalid', `a tile needs a replica; this specimen is a ${row!.kind}.`);
  return { specimen: id };
}

/** Used by plans and the demo too, inside their own transactions. */
export async function insertTile(tx: Transaction, studyId: string, wish: NewTile): Promise<string> {
  const zones = wish.zones ?? emptyGrid(wish.rows, wish.columns);
  requireGrid(zones, wish);
  requireDrawn(zones, []);
  const specimenId = wish.specimen ?? (await insertReplica(tx, studyId, wish.label!));
  const { firing: firingId, place, rows, columns, settings } = wish;
  await tx.insert(tile).values({ specimenId, studyId, firingId, place, rows, columns, settings });
  if (zones.length > 0) await tx.insert(zone).values(zones.map((each) => zoneRow(specimenId, each)));
  return specimenId;
}

async function insertReplica(tx: Transaction, studyId: string, label: string): Promise<string> {
  const [row] = await tx
    .insert(specimen)
    .values({ studyId, label, labelOrder: naturalOrder(label), catalogueOrder: '', kind: 'replica' })
    .returning({ id: specimen.id });
  return row!.id;
}

export async function changeTile(
  caller: Caller,
  studyId: string,
  { id, change }: { id: string; change: TileChange },
): Promise<Tile> {
  const before = await readTile(caller, studyId, id);
  if (change.firing) await firingRow(caller, studyId, change.firing);
  const { zones, firing: firingId, ...rest } = change;
  const set = given(rest);
  requireGrid(zones ?? before.zones, { ...before, ...set });
  requireDrawn(zones ?? [], before.pictures);
  await caller.db.transaction(async (tx) => {
    await tx
      .update(tile)
      .set({ ...set, ...(firingId === undefined ? {} : { firingId }), updatedAt: new Date() })
      .where(eq(tile.specimenId, id));
    if (zones) await replaceZones(tx, before, zones);
  });
  return readTile(caller, studyId, id);
}

/** Zones are known by their labels, so that an analysis of B2 stays one of B2. */
async function replaceZones(tx: Transaction, before: Tile, zones: readonly NewZone[]): Promise<void> {
  const labels = zones.map((each) => each.label);
  const gone = before.zones.filter((each) => !labels.includes(each.label)).map((each) => each.id);
  if (gone.length > 0) await tx.delete(zone).where(inArray(zone.id, gone));
  for (const each of zones) {
    const set = zoneRow(before.id, each);
    await tx
      .insert(zone)
      .values(set)
      .onConflictDoUpdate({ target: [zone.tileId, zone.label], set });
  }
}

function zoneRow(tileId: string, { picture: pictureId, ...fields }: NewZone) {
  return { ...fields, tileId, pictureId };
}

/** What was seen of one zone, as it is sent from the fire. A new outline leaves no measured colour of the old one. */
export async function changeZone(
  caller: Caller,
  studyId: string,
  { id, zoneId, change }: { id: string; zoneId: string; change: ZoneChange },
): Promise<Tile> {
  const before = await readTile(caller, studyId, id);
  const zoneBefore = found(
    before.zones.find((each) => each.id === zoneId),
    'the zone',
  );
  requireDrawn([{ ...zoneBefore, ...given(change) }], before.pictures);
  const { picture: pictureId, ...rest } = change;
  const stale = change.outline !== undefined && change.measuredColour === undefined;
  const set = given({ ...rest, pictureId, ...(stale ? { measuredColour: null } : {}) });
  if (Object.keys(set).length > 0) await caller.db.update(zone).set(set).where(eq(zone.id, zoneId));
  return touched(caller, studyId, id);
}

/** One more zone, on the grid or drawn on a picture. */
export async function addZone(
  caller: Caller,
  studyId: string,
  { id, wish }: { id: string; wish: NewZone },
): Promise<Tile> {
  const before = await readTile(caller, studyId, id);
  if (before.zones.length >= MOST_ZONES)
    throw new Failure('invalid', `a tile holds at most ${MOST_ZONES} zones; ${before.label} has them.`);
  requireGrid([...before.zones, wish], before);
  requireDrawn([wish], before.pictures);
  await unlessTaken(
    caller.db.insert(zone).values(zoneRow(id, wish)),
    `a zone's label must be unique on its tile; “${wish.label}” is taken.`,
  );
  return touched(caller, studyId, id);
}

/** Analyses of it stay with the tile. */
export async function deleteZone(
  caller: Caller,
  studyId: string,
  { id, zoneId }: { id: string; zoneId: string },
): Promise<void> {
  const before = await readTile(caller, studyId, id);
  found(
    before.zones.find((each) => each.id === zoneId),
    'the zone',
  );
  await caller.db.delete(zone).where(eq(zone.id, zoneId));
  await touched(caller, studyId, id);
}

async function touched(caller: Caller, studyId: string, id: string): Promise<Tile> {
  await caller.db.update(tile).set({ updatedAt: new Date() }).where(eq(tile.specimenId, id));
  return readTile(caller, studyId, id);
}

const given = (change: object) =>
  Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));

/** Its zones and pictures go; the replica and its analyses stay. */
export async function deleteTile(caller: Caller, studyId: string, id: string): Promise<void> {
  await readTile(caller, studyId, id);
  await caller.db.delete(tile).where(eq(tile.specimenId, id));
}

async function tilesWhere({ db }: Caller, studyId: string, ids?: readonly string[]): Promise<Tile[]> {
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
