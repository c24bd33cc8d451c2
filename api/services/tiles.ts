import { and, eq, inArray } from 'drizzle-orm';
import type { Transaction } from '../../db/connect.ts';
import { specimen, tile, zone } from '../../db/schema/schema.ts';
import type { NewTile, NewZone, Tile, TileChange } from '../contract/tile.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure, found, unlessTaken } from './failure.ts';
import { firingRow } from './firings.ts';
import { naturalOrder } from './natural-order.ts';
import { given, tilesWhere, zoneRow } from './tile-rows.ts';
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
  const { firing: firingId, place, position, rows, columns, settings } = wish;
  await tx.insert(tile).values({ specimenId, studyId, firingId, place, position, rows, columns, settings });
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

/** Its zones and pictures go; the replica and its analyses stay. */
export async function deleteTile(caller: Caller, studyId: string, id: string): Promise<void> {
  await readTile(caller, studyId, id);
  await caller.db.delete(tile).where(eq(tile.specimenId, id));
}
