import { and, asc, eq, sql } from 'drizzle-orm';
import { material } from '../../db/schema/schema.ts';
import type { MaterialChange, NewMaterial, StoredMaterial } from '../contract/material.ts';
import { materialOfEntry } from '../domain/batch/bench-shelf.ts';
import { type Caller, requireStudy } from './access.ts';
import { requireUnused } from './bench-shelf.ts';
import { found, unlessTaken } from './failure.ts';

export async function listMaterials(caller: Caller, studyId: string): Promise<StoredMaterial[]> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .select()
    .from(material)
    .where(eq(material.studyId, studyId))
    .orderBy(asc(sql`lower(${material.name})`));
  return rows.map(answer);
}

/** Refused, in the domain's words, when its formula or analysis cannot be. */
export async function createMaterial(
  caller: Caller,
  studyId: string,
  wish: NewMaterial,
): Promise<StoredMaterial> {
  await requireStudy(caller, studyId);
  materialOfEntry({ ...wish, id: 'new' });
  const [row] = await unlessTaken(
    caller.db
      .insert(material)
      .values({ ...wish, studyId })
      .returning(),
    taken(wish.name),
  );
  return answer(row!);
}

export async function readMaterial(caller: Caller, studyId: string, id: string): Promise<StoredMaterial> {
  await requireStudy(caller, studyId);
  const [row] = await caller.db.select().from(material).where(one(studyId, id));
  return answer(found(row, 'the material'));
}

export async function changeMaterial(
  caller: Caller,
  studyId: string,
  { id, change }: { id: string; change: MaterialChange },
): Promise<StoredMaterial> {
  const before = await readMaterial(caller, studyId, id);
  const set = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
  materialOfEntry({ ...before, ...set });
  const [row] = await unlessTaken(
    caller.db
      .update(material)
      .set({ ...set, updatedAt: new Date() })
      .where(one(studyId, id))
      .returning(),
    taken(change.name ?? ''),
  );
  return answer(found(row, 'the material'));
}

export async function deleteMaterial(caller: Caller, studyId: string, id: string): Promise<void> {
  await readMaterial(caller, studyId, id);
  await requireUnused(caller, studyId, id);
  await caller.db.delete(material).where(one(studyId, id));
}

const one = (studyId: string, id: string) => and(eq(material.studyId, studyId), eq(material.id, id));
const taken = (name: string) => `a material's name must be unique in its study; “${name}” is taken.`;

function answer({ studyId: _, ...row }: typeof material.$inferSelect): StoredMaterial {
  const { createdAt, updatedAt, making, hazards } = row;
  return {
    ...row,
    making: making as StoredMaterial['making'],
    hazards: [...hazards] as StoredMaterial['hazards'],
    createdAt: createdAt.toISOString(),
    updatedAt: updatedAt.toISOString(),
  };
}
