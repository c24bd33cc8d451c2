import { asc, eq, sql } from 'drizzle-orm';
import { batch, material, roast } from '../../db/schema/schema.ts';
import type { ShelfAnswer } from '../contract/material.ts';
import { type BenchShelf, buildShelf } from '../domain/batch/bench-shelf.ts';
import type { MaterialEntry, RoastEntry } from '../domain/batch/entries.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure } from './failure.ts';

/** Everything a line can name, computed from the study's rows. `without` leaves one roast out: it may not hold itself. */
export async function readShelf(caller: Caller, studyId: string, without?: string): Promise<BenchShelf> {
  await requireStudy(caller, studyId);
  const materials = await caller.db
    .select()
    .from(material)
    .where(eq(material.studyId, studyId))
    .orderBy(asc(sql`lower(${material.name})`));
  const roasts = await caller.db
    .select()
    .from(roast)
    .where(eq(roast.studyId, studyId))
    .orderBy(asc(roast.createdAt));
  return buildShelf(
    materials as unknown as MaterialEntry[],
    (roasts as unknown as RoastEntry[]).filter((one) => one.id !== without),
  );
}

export async function answerShelf(caller: Caller, studyId: string): Promise<ShelfAnswer> {
  const { materials, roasts, faults } = await readShelf(caller, studyId);
  const kindOf = (key: string) => (roasts.has(key) ? 'roast' : key.length === 36 ? 'own' : 'starter');
  return {
    materials: [...materials].map(([key, { name, source, hazards, handling, warnings, content }]) => ({
      key,
      name,
      kind: kindOf(key),
      source,
      hazards: [...hazards],
      handling,
      warnings: [...warnings],
      moles: content.moles,
    })),
    faults: { ...faults },
  };
}

/** Refuses to take away what batches or roasts are weighed from. */
export async function requireUnused(caller: Caller, studyId: string, key: string): Promise<void> {
  const wanted = JSON.stringify([{ material: key }]);
  const batches = await caller.db
    .select({ name: batch.name })
    .from(batch)
    .where(sql`${batch.studyId} = ${studyId} and ${batch.lines} @> ${wanted}::text::jsonb`);
  const roasts = await caller.db
    .select({ name: roast.name })
    .from(roast)
    .where(sql`${roast.studyId} = ${studyId} and ${roast.charge} @> ${wanted}::text::jsonb`);
  const users = [...batches, ...roasts].map((row) => row.name);
  if (users.length > 0)
    throw new Failure(
      'conflict',
      `a material can be deleted once nothing is weighed from it; still used in ${users.join(', ')}.`,
    );
}
