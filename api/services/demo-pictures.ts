import { and, eq } from 'drizzle-orm';
import type { Transaction } from '../../db/connect.ts';
import { analysis, picture, zone } from '../../db/schema/schema.ts';
import { measureColour } from '../domain/colour/measure.ts';
import { type InventedPicture, inventTilePicture } from './demo/tile-picture.ts';
import { DEMO_TILES } from './demo/trial.ts';

/** Tiles of one roast and one lead, two and four coats: the pair that the question turns on. */
export const PICTURED = ['Tile 4', 'Tile 5'];
const invented = new Map<string, InventedPicture>();

/** Gives two tiles of the demo a picture with zones and grey outlined, and colours measured as a page would. */
export async function insertPictures(
  tx: Transaction,
  studyId: string,
  specimens: ReadonlyMap<string, string>,
): Promise<void> {
  for (const tile of DEMO_TILES.filter(({ label }) => PICTURED.includes(label))) {
    const tileId = specimens.get(tile.label);
    if (tileId) await insertPicture(tx, studyId, { tileId, made: pictureOf(tile) });
  }
}

function pictureOf(tile: (typeof DEMO_TILES)[number]): InventedPicture {
  const made = invented.get(tile.label) ?? inventTilePicture(tile);
  invented.set(tile.label, made);
  return made;
}

async function insertPicture(
  tx: Transaction,
  studyId: string,
  { tileId, made }: { tileId: string; made: InventedPicture },
): Promise<void> {
  const { pixels, png, grey, outlines } = made;
  const caption = 'Invented picture, with an 18 % grey card';
  const [row] = await tx
    .insert(picture)
    .values({
      ...{ studyId, tileId, caption, grey, bytes: png, type: 'image/png', taken: '2026-02-23' },
      ...{ width: pixels.width, height: pixels.height },
    })
    .returning({ id: picture.id });
  const zones = await tx
    .select({ id: zone.id, label: zone.label })
    .from(zone)
    .where(eq(zone.tileId, tileId))
    .orderBy(zone.row, zone.column);
  for (const [i, { id }] of zones.entries()) {
    const outline = outlines[i]!;
    const found = measureColour(pixels, outline, grey);
    const measuredColour = { ...found, picture: row!.id, pictureCaption: caption };
    await tx.update(zone).set({ pictureId: row!.id, outline, measuredColour }).where(eq(zone.id, id));
  }
  await nameSpots(tx, tileId, zones);
}

/** The invented laboratory read the paint at two spots: the first zone and the last of the upper row. */
async function nameSpots(
  tx: Transaction,
  tileId: string,
  zones: readonly { id: string; label: string }[],
): Promise<void> {
  for (const [spot, label] of [
    ['1', 'A1'],
    ['2', 'C1'],
  ] as const) {
    const zoneId = zones.find((one) => one.label === label)!.id;
    await tx
      .update(analysis)
      .set({ zoneId })
      .where(and(eq(analysis.specimenId, tileId), eq(analysis.measured, 'paint'), eq(analysis.spot, spot)));
  }
}
