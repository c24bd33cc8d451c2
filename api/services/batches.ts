import { and, asc, eq, inArray } from 'drizzle-orm';
import type { Transaction } from '../../db/connect.ts';
import { batch, specimenBatch, visibleSpecimen } from '../../db/schema/schema.ts';
import type { Batch, BatchChange, NewBatch } from '../contract/batch.ts';
import { fireBatch } from '../domain/batch/batch.ts';
import { fireOfEntry, linesOfEntries } from '../domain/batch/bench-shelf.ts';
import { type Caller, requireStudy } from './access.ts';
import { readShelf } from './bench-shelf.ts';
import { Failure, found, unlessTaken } from './failure.ts';
import { naturalOrder } from './natural-order.ts';

export async function listBatches(caller: Caller, studyId: string): Promise<Batch[]> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .select()
    .from(batch)
    .where(eq(batch.studyId, studyId))
    .orderBy(asc(batch.createdAt), batch.id);
  const made = await madeOf(
    caller,
    rows.map((row) => row.id),
  );
  const order = (row: Row) => naturalOrder(row.name);
  return rows
    .sort((a, b) => (order(a) < order(b) ? -1 : 1))
    .map((row) => answer(row, made.get(row.id) ?? []));
}

/** Refused, in the domain's words, when it cannot be fired. */
export async function createBatch(caller: Caller, studyId: string, wish: NewBatch): Promise<Batch> {
  const { specimens, ...fields } = wish;
  await requireFireable(caller, studyId, wish);
  await requireSpecimens(caller, studyId, specimens);
  const id = await unlessTaken(
    caller.db.transaction(async (tx) => {
      const [row] = await tx
        .insert(batch)
        .values({ ...fields, studyId })
        .returning({ id: batch.id });
      await makeOf(tx, row!.id, specimens);
      return row!.id;
    }),
    taken(wish.name),
  );
  return readBatch(caller, studyId, id);
}

export async function readBatch(caller: Caller, studyId: string, id: string): Promise<Batch> {
  await requireStudy(caller, studyId);
  const [row] = await caller.db.select().from(batch).where(one(studyId, id));
  const made = await madeOf(caller, [id]);
  return answer(found(row, 'the batch'), made.get(id) ?? []);
}

export async function changeBatch(
  caller: Caller,
  studyId: string,
  { id, change }: { id: string; change: BatchChange },
): Promise<Batch> {
  const before = await readBatch(caller, studyId, id);
  const { specimens, ...rest } = change;
  const set = Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined));
  await requireFireable(caller, studyId, { ...before, ...set });
  if (specimens) await requireSpecimens(caller, studyId, specimens);
  await unlessTaken(
    caller.db.transaction(async (tx) => {
      await tx
        .update(batch)
        .set({ ...set, updatedAt: new Date() })
        .where(one(studyId, id));
      if (specimens) await makeOf(tx, id, specimens);
    }),
    taken(change.name ?? ''),
  );
  return readBatch(caller, studyId, id);
}

/** Its specimens stay, made of no known batch. */
export async function deleteBatch(caller: Caller, studyId: string, id: string): Promise<void> {
  await readBatch(caller, studyId, id);
  await caller.db.delete(batch).where(one(studyId, id));
}

async function requireFireable(
  caller: Caller,
  studyId: string,
  { lines, fire }: Pick<NewBatch, 'lines' | 'fire'>,
): Promise<void> {
  const shelf = await readShelf(caller, studyId);
  fireBatch(linesOfEntries(lines, shelf), fireOfEntry(fire));
}

async function requireSpecimens(caller: Caller, studyId: string, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return;
  const rows = await caller.db
    .select({ id: visibleSpecimen.id })
    .from(visibleSpecimen)
    .where(and(eq(visibleSpecimen.studyId, studyId), inArray(visibleSpecimen.id, [...ids])));
  if (rows.length === new Set(ids).size) return;
  const message = 'every specimen made of a batch must exist in this study; one or more do not.';
  throw new Failure('invalid', message, [{ at: 'specimens', message }]);
}

/** A specimen is made of one batch: naming it here takes it from another. */
async function makeOf(tx: Transaction, batchId: string, specimens: readonly string[]): Promise<void> {
  await tx.delete(specimenBatch).where(eq(specimenBatch.batchId, batchId));
  if (specimens.length === 0) return;
  const ids = [...new Set(specimens)];
  await tx.delete(specimenBatch).where(inArray(specimenBatch.specimenId, ids));
  await tx.insert(specimenBatch).values(ids.map((specimenId) => ({ specimenId, batchId })));
}

async function madeOf({ db }: Caller, batches: readonly string[]): Promise<Map<string, string[]>> {
  const made = new Map<string, string[]>();
  if (batches.length === 0) return made;
  const rows = await db
    .select()
    .from(specimenBatch)
    .where(inArray(specimenBatch.batchId, [...batches]));
  for (const { batchId, specimenId } of rows) made.set(batchId, [...(made.get(batchId) ?? []), specimenId]);
  return made;
}

type Row = typeof batch.$inferSelect;
const one = (studyId: string, id: string) => and(eq(batch.studyId, studyId), eq(batch.id, id));
const taken = (name: string) => `a batch's name must be unique in its study; “${name}” is taken.`;

function answer({ studyId: _, ...row }: Row, specimens: readonly string[]): Batch {
  return {
    ...row,
    lines: [...row.lines],
    fire: row.fire as Batch['fire'],
    target: row.target as Batch['target'],
    specimens: [...specimens],
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  };
}
