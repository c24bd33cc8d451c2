import { eq } from 'drizzle-orm';
import { tile, zone } from '../../db/schema/schema.ts';
import { MOST_ZONES, type NewZone, type Tile, type ZoneChange } from '../contract/tile.ts';
import type { Caller } from './access.ts';
import { Failure, found, unlessTaken } from './failure.ts';
import { given, zoneRow } from './tile-rows.ts';
import { readTile } from './tiles.ts';
import { requireDrawn, requireGrid } from './zone-grid.ts';

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
