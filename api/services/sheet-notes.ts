import { and, eq } from 'drizzle-orm';
import type { Database, Transaction } from '../../db/connect.ts';
import { firing, tile, zone } from '../../db/schema/schema.ts';
import { MOST_READINGS } from '../contract/firing.ts';
import type { Sheet, SheetNote, SheetPicture } from '../contract/sheet.ts';
import type { FireLog } from '../domain/firing/fire-note-types.ts';
import { noteFire } from '../domain/firing/fire-notes.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure, found } from './failure.ts';
import { createPicture } from './pictures.ts';
import { logOf, ofPlace, readSheet, type SheetPlace } from './sheet.ts';

/** A firing with more notes than this was not noted by people. */
const MOST_MARKS = 3_000;

export async function sheetOfStudy(caller: Caller, studyId: string, firingId: string): Promise<Sheet> {
  await requireStudy(caller, studyId);
  return readSheet(caller.db, { studyId, firingId });
}

export async function noteOnSheet(
  caller: Caller,
  place: SheetPlace,
  notes: readonly SheetNote[],
): Promise<Sheet> {
  await requireStudy(caller, place.studyId);
  return addNotes(caller.db, place, notes);
}

export async function pictureOnSheet(caller: Caller, place: SheetPlace, sent: SheetPicture): Promise<Sheet> {
  await requireStudy(caller, place.studyId);
  return addPicture(caller.db, place, sent);
}

/**
 * Writes notes into a firing, all or none. The row is held while it is done, so that two phones never write over each
 * other; a note that has arrived before changes nothing.
 */
export function addNotes(db: Database, place: SheetPlace, notes: readonly SheetNote[]): Promise<Sheet> {
  return changeSheet(db, place, async (tx, before) => {
    let log = before;
    for (const note of notes) log = await withNote(tx, log, { note, firingId: place.firingId });
    return log;
  });
}

/** Keeps a picture taken at the fire, once however often it is sent. */
export function addPicture(
  db: Database,
  place: SheetPlace,
  { id: mark, noted, at, file, tile: tileId }: SheetPicture,
): Promise<Sheet> {
  return changeSheet(db, place, async (tx, log) => {
    if (log.marks.some((one) => one.mark === mark)) return log;
    if (tileId !== undefined) await requireTile(tx, tileId, place.firingId);
    const of = tileId === undefined ? { firing: place.firingId } : { tile: tileId };
    const caption = 'Taken at the fire';
    const wish = { file, ...of, caption, taken: at.slice(0, 10) };
    await createPicture({ db: tx, who: 'local' }, place.studyId, wish);
    return { ...log, marks: [...log.marks, { mark, noted, at, kind: 'picture' }] };
  });
}

function changeSheet(
  db: Database,
  place: SheetPlace,
  change: (tx: Transaction, log: FireLog) => Promise<FireLog>,
): Promise<Sheet> {
  return db.transaction(async (tx) => {
    const [row] = await tx.select().from(firing).where(ofPlace(place)).for('update');
    const log = await change(tx, logOf(found(row, 'the firing')));
    if (log.readings.length > MOST_READINGS)
      throw new Failure('invalid', `a firing holds at most ${MOST_READINGS} readings by hand.`);
    if (log.marks.length > MOST_MARKS)
      throw new Failure('invalid', `a firing holds at most ${MOST_MARKS} notes from the fire.`);
    const set = { stages: log.stages, readings: [...log.readings, ...log.marks], updatedAt: new Date() };
    await tx.update(firing).set(set).where(ofPlace(place));
    return readSheet(tx, place);
  });
}

async function withNote(
  tx: Transaction,
  log: FireLog,
  { note, firingId }: { note: SheetNote; firingId: string },
): Promise<FireLog> {
  if (note.kind !== 'judgement') return noteFire(log, note);
  if (log.marks.some((one) => one.mark === note.id)) return log;
  await requireZone(tx, note, firingId);
  // Of two judgements the one made later stands, in whatever order they arrive.
  const later = log.marks.some(
    (one) => one.zone === note.zone && Date.parse(one.noted) > Date.parse(note.noted),
  );
  if (!later) {
    await tx.update(zone).set({ grade: note.grade }).where(eq(zone.id, note.zone));
    await tx.update(tile).set({ updatedAt: new Date() }).where(eq(tile.specimenId, note.tile));
  }
  const { id: mark, noted, at, kind } = note;
  return { ...log, marks: [...log.marks, { mark, noted, at, kind, zone: note.zone }] };
}

async function requireTile(tx: Transaction, tileId: string, firingId: string) {
  const [row] = await tx
    .select({ id: tile.specimenId })
    .from(tile)
    .where(and(eq(tile.specimenId, tileId), eq(tile.firingId, firingId)));
  if (!row) throw new Failure('not found', 'the tile must stand in this firing; it does not.');
}

/** Only zones of tiles that stand in this fire can be judged on its sheet. */
async function requireZone(tx: Transaction, note: { tile: string; zone: string }, firingId: string) {
  const rows = await tx
    .select({ id: zone.id })
    .from(zone)
    .innerJoin(tile, eq(tile.specimenId, zone.tileId))
    .where(and(eq(zone.id, note.zone), eq(tile.specimenId, note.tile), eq(tile.firingId, firingId)));
  if (rows.length === 0)
    throw new Failure('not found', 'the zone must be of a tile that stands in this firing; it is not.');
}
