import { and, eq } from 'drizzle-orm';
import { firing, tile } from '../../db/schema/schema.ts';
import type { FiringChange, FiringRecord, NewFiring, TakenReading } from '../contract/firing.ts';
import { MOST_READINGS } from '../contract/firing.ts';
import type { FireLog } from '../domain/firing/fire-note-types.ts';
import { changeStages } from '../domain/firing/hand-stages.ts';
import { sameStages, stageInWords, stagesInOrder } from '../domain/firing/stages.ts';
import type { AirStage } from '../domain/firing/types.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure, found, unlessTaken } from './failure.ts';
import { type FiringRow, firingAnswer } from './firing-answer.ts';
import { naturalOrder } from './natural-order.ts';
import { logOf, ofPlace, type SheetPlace, withId } from './sheet.ts';

/** Without their curves, which are read one firing at a time. */
export async function listFirings(caller: Caller, studyId: string): Promise<FiringRecord[]> {
  await requireStudy(caller, studyId);
  const rows = await caller.db.select().from(firing).where(eq(firing.studyId, studyId));
  const tiles = await caller.db
    .select({ id: tile.specimenId, firing: tile.firingId })
    .from(tile)
    .where(eq(tile.studyId, studyId));
  const of = (id: string) => tiles.filter((one) => one.firing === id).map((one) => one.id);
  const order = (row: FiringRow) => `${row.date ?? '9999'} ${naturalOrder(row.name)}`;
  return rows
    .sort((a, b) => (order(a) < order(b) ? -1 : 1))
    .map((row) => firingAnswer(row, of(row.id), { curves: false }));
}

export async function readFiring(caller: Caller, studyId: string, id: string): Promise<FiringRecord> {
  await requireStudy(caller, studyId);
  const row = await firingRow(caller, studyId, id);
  const tiles = await caller.db.select({ id: tile.specimenId }).from(tile).where(eq(tile.firingId, id));
  return firingAnswer(
    row,
    tiles.map((one) => one.id),
    { curves: true },
  );
}

export async function createFiring(caller: Caller, studyId: string, wish: NewFiring): Promise<FiringRecord> {
  await requireStudy(caller, studyId);
  const [stages, readings] = [stagesInOrder(wish.stages), wish.readings.map(withId)];
  const [row] = await unlessTaken(
    caller.db
      .insert(firing)
      .values({ ...wish, stages, readings, studyId })
      .returning({ id: firing.id }),
    taken(wish.name),
  );
  return readFiring(caller, studyId, row!.id);
}

export function changeFiring(
  caller: Caller,
  studyId: string,
  { id, change: { stages, stagesWere, ...rest } }: { id: string; change: FiringChange },
): Promise<FiringRecord> {
  const given = Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined));
  const place = { studyId, firingId: id };
  const work = changeHeld(caller, place, (log) => {
    if (!stages) return given;
    requireStagesAsSeen(log.stages, stagesWere);
    const changed = changeStages(log, stages);
    return { ...given, stages: changed.stages, readings: [...changed.readings, ...changed.marks] };
  });
  return unlessTaken(work, taken(rest.name ?? ''));
}

/** Puts readings taken by hand behind those that are there. */
export function addReadings(
  caller: Caller,
  studyId: string,
  { id, readings }: { id: string; readings: readonly TakenReading[] },
): Promise<FiringRecord> {
  return changeHeld(caller, { studyId, firingId: id }, (log) => {
    const all = [...log.readings, ...readings.map(withId)];
    if (all.length > MOST_READINGS)
      throw new Failure('invalid', `a firing holds at most ${MOST_READINGS} readings by hand.`);
    return { readings: [...all, ...log.marks] };
  });
}

/** The mark of the note it came by stays, so that a phone that sends it again does not bring it back. */
export function takeOffReading(
  caller: Caller,
  studyId: string,
  { id, reading }: { id: string; reading: string },
): Promise<FiringRecord> {
  return changeHeld(caller, { studyId, firingId: id }, (log) => {
    const left = log.readings.filter((each) => each.id !== reading);
    if (left.length === log.readings.length)
      throw new Failure(
        'conflict',
        'a reading to be taken off must still be there; this one is not: it may have been taken off meanwhile.',
      );
    return { readings: [...left, ...log.marks] };
  });
}

/** Changes a firing while its row is held, since notes from the fire may arrive meanwhile. */
async function changeHeld(
  caller: Caller,
  place: SheetPlace,
  change: (log: FireLog) => Partial<typeof firing.$inferInsert>,
): Promise<FiringRecord> {
  await requireStudy(caller, place.studyId);
  await caller.db.transaction(async (tx) => {
    const [row] = await tx.select().from(firing).where(ofPlace(place)).for('update');
    const set = change(logOf(found(row, 'the firing')));
    await tx
      .update(firing)
      .set({ ...set, updatedAt: new Date() })
      .where(ofPlace(place));
  });
  return readFiring(caller, place.studyId, place.firingId);
}

function requireStagesAsSeen(now: readonly AirStage[], seen: readonly AirStage[] | undefined) {
  if (!seen || sameStages(seen, now)) return;
  const list = now.map(stageInWords).join(', ') || 'none';
  throw new Failure(
    'conflict',
    `stages must be changed as they are; others were noted meanwhile. They are now: ${list}.`,
  );
}

/** Its tiles stay, in no known fire. */
export async function deleteFiring(caller: Caller, studyId: string, id: string): Promise<void> {
  await requireStudy(caller, studyId);
  await firingRow(caller, studyId, id);
  await caller.db.delete(firing).where(one(studyId, id));
}

export async function firingRow({ db }: Caller, studyId: string, id: string): Promise<FiringRow> {
  const [row] = await db.select().from(firing).where(one(studyId, id));
  return found(row, 'the firing');
}

const one = (studyId: string, id: string) => and(eq(firing.studyId, studyId), eq(firing.id, id));
const taken = (name: string) => `a firing's name must be unique in its study; “${name}” is taken.`;
