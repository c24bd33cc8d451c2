import { randomUUID } from 'node:crypto';
import type { Transaction } from '../../db/connect.ts';
import { batch, material, roast, specimenBatch } from '../../db/schema/schema.ts';
import type { LineEntry } from '../domain/batch/entries.ts';
import { DEMO_BATCHES, DEMO_MATERIALS, DEMO_ROASTS } from './demo/bench.ts';

/** Fills the bench of the demo study, and links its tiles to the batches that they were painted with. */
export async function insertBench(
  tx: Transaction,
  studyId: string,
  specimens: ReadonlyMap<string, string>,
): Promise<void> {
  const ids = new Map([...DEMO_MATERIALS, ...DEMO_ROASTS].map(({ id }) => [id, randomUUID() as string]));
  const named = (lines: readonly LineEntry[]) =>
    lines.map((line) => ({ ...line, material: ids.get(line.material) ?? line.material }));
  await tx.insert(material).values(DEMO_MATERIALS.map((one) => ({ ...one, studyId, id: ids.get(one.id)! })));
  await tx
    .insert(roast)
    .values(DEMO_ROASTS.map((one) => ({ ...one, studyId, id: ids.get(one.id)!, charge: named(one.charge) })));
  const batches = DEMO_BATCHES.map(({ tiles, ...one }) => ({ tiles, row: { ...one, id: randomUUID() } }));
  await tx
    .insert(batch)
    .values(batches.map(({ row }) => ({ ...row, studyId, unit: 'g' as const, lines: named(row.lines) })));
  const made = batches.flatMap(({ tiles, row }) =>
    tiles.flatMap((label) => {
      const specimenId = specimens.get(label);
      return specimenId ? [{ specimenId, batchId: row.id }] : [];
    }),
  );
  if (made.length > 0) await tx.insert(specimenBatch).values(made);
}
