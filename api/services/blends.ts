import { batch } from '../../db/schema/schema.ts';
import type { Batch, NewBlend } from '../contract/batch.ts';
import { linesOfEntries } from '../domain/batch/bench-shelf.ts';
import { blendSeries } from '../domain/batch/blend.ts';
import type { Caller } from './access.ts';
import { listBatches, readBatch } from './batches.ts';
import { readShelf } from './bench-shelf.ts';
import { unlessTaken } from './failure.ts';

/** Keeps every mixture of a line, triangle or square between batches as a batch, fired as the first is. */
export async function createBlend(caller: Caller, studyId: string, wish: NewBlend): Promise<Batch[]> {
  const shelf = await readShelf(caller, studyId);
  const ends: Batch[] = [];
  for (const id of wish.batches) ends.push(await readBatch(caller, studyId, id));
  const points = blendSeries(
    ends.map((end) => linesOfEntries(end.lines, shelf)),
    wish,
  );
  const rows = points.map(({ label, shares, lines }) => ({
    studyId,
    name: `${wish.name} ${label}`,
    unit: 'g' as const,
    lines: lines.map(({ material, amount, water = 0 }) => ({ material: material.id, amount, water })),
    fire: ends[0]!.fire,
    series: wish.name,
    place: label,
    note: shares.map((share, i) => `${(100 * share).toFixed(1)} % ${ends[i]!.name}`).join(', '),
  }));
  const made = await unlessTaken(
    caller.db.insert(batch).values(rows).returning({ id: batch.id }),
    `a blend's name must be new in its study; “${wish.name}” has batches already.`,
  );
  const ids = new Set(made.map((row) => row.id));
  return (await listBatches(caller, studyId)).filter((one) => ids.has(one.id));
}
