import { and, desc, eq } from 'drizzle-orm';
import { roast } from '../../db/schema/schema.ts';
import type { NewRoast, RoastAnswer, RoastChange, RoastWeighed, StoredRoast } from '../contract/roast.ts';
import { roastOfEntry } from '../domain/batch/bench-shelf.ts';
import { judgeRoast } from '../domain/batch/roast-judgement.ts';
import type { Hazard } from '../domain/batch/types.ts';
import { type Caller, requireStudy } from './access.ts';
import { readShelf, requireUnused } from './bench-shelf.ts';
import { found, unlessTaken } from './failure.ts';
import { safetyFor } from './safety.ts';

export async function listRoasts(caller: Caller, studyId: string): Promise<StoredRoast[]> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .select()
    .from(roast)
    .where(eq(roast.studyId, studyId))
    .orderBy(desc(roast.createdAt), roast.id);
  return rows.map(answer);
}

/** Refused, in the domain's words, when no mixture of lead compounds explains the weighing. */
export async function createRoast(caller: Caller, studyId: string, wish: NewRoast): Promise<StoredRoast> {
  roastOfEntry({ ...wish, id: 'new' }, await readShelf(caller, studyId));
  const [row] = await unlessTaken(
    caller.db
      .insert(roast)
      .values({ ...wish, studyId })
      .returning(),
    taken(wish.name),
  );
  return answer(row!);
}

export async function readRoast(caller: Caller, studyId: string, id: string): Promise<StoredRoast> {
  await requireStudy(caller, studyId);
  const [row] = await caller.db.select().from(roast).where(one(studyId, id));
  return answer(found(row, 'the roast'));
}

/** A roast never holds itself: its charge is read from a shelf without it and what follows from it. */
export async function changeRoast(
  caller: Caller,
  studyId: string,
  { id, change }: { id: string; change: RoastChange },
): Promise<StoredRoast> {
  const before = await readRoast(caller, studyId, id);
  const set = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
  roastOfEntry({ ...before, ...set }, await readShelf(caller, studyId, id));
  const [row] = await unlessTaken(
    caller.db
      .update(roast)
      .set({ ...set, updatedAt: new Date() })
      .where(one(studyId, id))
      .returning(),
    taken(change.name ?? ''),
  );
  return answer(found(row, 'the roast'));
}

export async function deleteRoast(caller: Caller, studyId: string, id: string): Promise<void> {
  await readRoast(caller, studyId, id);
  await requireUnused(caller, studyId, id);
  await caller.db.delete(roast).where(one(studyId, id));
}

/** What a weighing says, without keeping it. */
export async function assessRoast(
  caller: Caller,
  studyId: string,
  record: RoastWeighed,
): Promise<RoastAnswer> {
  const shelf = await readShelf(caller, studyId);
  const result = roastOfEntry({ ...record, id: 'new', name: 'new' }, shelf);
  const { massIn, change, inert, expected, expectedPhases, phases, leadOxide, sulfur, dioxide } = result;
  const held = result.record.charge.flatMap((line) => line.material.hazards);
  const hazards: Hazard[] = [...held, ...(dioxide.grams.high > 0 ? ['sulfur' as const] : [])];
  const whole = {
    massIn,
    change,
    inert,
    ranges: { phases, leadOxide, sulfur, dioxide },
    expected: expected && {
      phases: expected.phases,
      leadOxide: expected.leadOxide,
      sulfur: expected.sulfur,
      dioxide: expected.dioxide,
    },
    expectedPhases,
    judgement: judgeRoast(result, record.looks),
    safety: safetyFor(hazards),
  };
  return whole as RoastAnswer;
}

const one = (studyId: string, id: string) => and(eq(roast.studyId, studyId), eq(roast.id, id));
const taken = (name: string) => `a roast's name must be unique in its study; “${name}” is taken.`;

function answer({ studyId: _, ...row }: typeof roast.$inferSelect): StoredRoast {
  return {
    ...row,
    charge: [...row.charge],
    looks: row.looks as StoredRoast['looks'],
    sulfur: row.sulfur as StoredRoast['sulfur'],
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  };
}
