import { and, eq, sql } from 'drizzle-orm';
import { firing, tile } from '../../db/schema/schema.ts';
import type { FiringChange, FiringRecord, NewFiring, TakenReading } from '../contract/firing.ts';
import { MOST_READINGS } from '../contract/firing.ts';
import { stagesInOrder } from '../domain/firing/stages.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure, found, unlessTaken } from './failure.ts';
import { type FiringRow, firingAnswer } from './firing-answer.ts';
import { naturalOrder } from './natural-order.ts';
import { logOf } from './sheet.ts';

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
  const stages = stagesInOrder(wish.stages);
  const [row] = await unlessTaken(
    caller.db
      .insert(firing)
      .values({ ...wish, stages, studyId })
      .returning({ id: firing.id }),
    taken(wish.name),
  );
  return readFiring(caller, studyId, row!.id);
}

export async function changeFiring(
  caller: Caller,
  studyId: string,
  { id, change }: { id: string; change: FiringChange },
): Promise<FiringRecord> {
  await requireStudy(caller, studyId);
  const given = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
  const stages = change.stages ? { stages: stagesInOrder(change.stages) } : {};
  const work = caller.db.transaction(async (tx) => {
    // Held while it changes: notes from the fire may arrive meanwhile, and their marks stay.
    const [row] = await tx.select().from(firing).where(one(studyId, id)).for('update');
    const { marks } = logOf(found(row, 'the firing'));
    const readings = change.readings ? { readings: [...change.readings, ...marks] } : {};
    const set = { ...given, ...stages, ...readings, updatedAt: new Date() };
    await tx.update(firing).set(set).where(one(studyId, id));
  });
  await unlessTaken(work, taken(change.name ?? ''));
  return readFiring(caller, studyId, id);
}

/** Puts readings taken by hand behind those that are there; two people may send theirs at once. */
export async function addReadings(
  caller: Caller,
  studyId: string,
  { id, readings }: { id: string; readings: readonly TakenReading[] },
): Promise<FiringRecord> {
  const before = await readFiring(caller, studyId, id);
  if (before.readings.length + readings.length > MOST_READINGS)
    throw new Failure('invalid', `a firing holds at most ${MOST_READINGS} readings by hand.`);
  // As text first: one of the two drivers would otherwise encode it twice.
  const more = sql`${firing.readings} || ${JSON.stringify(readings)}::text::jsonb`;
  await caller.db.update(firing).set({ readings: more, updatedAt: new Date() }).where(one(studyId, id));
  return readFiring(caller, studyId, id);
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
