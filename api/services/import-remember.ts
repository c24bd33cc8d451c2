import { eq } from 'drizzle-orm';
import type { Database } from '../../db/connect.ts';
import { columnChoice } from '../../db/schema/schema.ts';
import type { RememberedChoices } from '../intake/types.ts';

/** How files were understood before, by the fingerprint of their headers. */
export async function rememberedChoices(
  db: Database,
  studyId: string,
): Promise<Record<string, RememberedChoices>> {
  const rows = await db.select().from(columnChoice).where(eq(columnChoice.studyId, studyId));
  return Object.fromEntries(rows.map((row) => [row.fingerprint, row.choices as RememberedChoices]));
}

export async function rememberChoices(
  db: Database,
  studyId: string,
  { fingerprint, choices }: { fingerprint: string; choices: RememberedChoices },
): Promise<void> {
  await db
    .insert(columnChoice)
    .values({ studyId, fingerprint, choices })
    .onConflictDoUpdate({
      target: [columnChoice.studyId, columnChoice.fingerprint],
      set: { choices, updatedAt: new Date() },
    });
}
