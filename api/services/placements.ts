import { and, desc, eq } from 'drizzle-orm';
import { placement } from '../../db/schema/schema.ts';
import type { Comparison, FrozenPlacement, NewPlacement, PlacementSummary } from '../contract/placement.ts';
import { type Caller, requireStudy } from './access.ts';
import { compare } from './comparison.ts';
import { readComparisonData } from './comparison-data.ts';
import { found } from './failure.ts';
import { VERSION } from './version.ts';

export async function listPlacements(caller: Caller, studyId: string): Promise<PlacementSummary[]> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .select(summaryColumns)
    .from(placement)
    .where(eq(placement.studyId, studyId))
    .orderBy(desc(placement.createdAt), placement.id);
  return rows.map(summary);
}

/** Makes a comparison now and keeps it as it was answered, whatever changes in the study later. */
export async function freezePlacement(
  caller: Caller,
  studyId: string,
  wish: NewPlacement,
): Promise<FrozenPlacement> {
  const result = await compare(caller, studyId, wish.comparison);
  const { name, note } = wish;
  const sentences = result.placements.map((placed) => placed.sentence);
  const data = await readComparisonData(caller, studyId, wish.comparison);
  const kept = { version: VERSION, sentences, settings: wish.comparison, result, data };
  const [row] = await caller.db
    .insert(placement)
    .values({ studyId, name, note, ...kept })
    .returning(summaryColumns);
  return { ...summary(row!), result };
}

export async function readPlacement(
  caller: Caller,
  studyId: string,
  placementId: string,
): Promise<FrozenPlacement> {
  await requireStudy(caller, studyId);
  const [row] = await caller.db
    .select({ ...summaryColumns, result: placement.result })
    .from(placement)
    .where(one(studyId, placementId));
  const { result, ...rest } = found(row, 'the placement');
  return { ...summary(rest), result: result as Comparison };
}

export async function changePlacement(
  caller: Caller,
  studyId: string,
  {
    placementId,
    change,
  }: { placementId: string; change: { name?: string | undefined; note?: string | undefined } },
): Promise<PlacementSummary> {
  await readPlacement(caller, studyId, placementId);
  const [row] = await caller.db
    .update(placement)
    .set({ ...change, id: placementId })
    .where(one(studyId, placementId))
    .returning(summaryColumns);
  return summary(row!);
}

export async function deletePlacement(caller: Caller, studyId: string, placementId: string): Promise<void> {
  await requireStudy(caller, studyId);
  const rows = await caller.db
    .delete(placement)
    .where(one(studyId, placementId))
    .returning({ id: placement.id });
  found(rows[0], 'the placement');
}

const one = (studyId: string, placementId: string) =>
  and(eq(placement.studyId, studyId), eq(placement.id, placementId));

const summaryColumns = {
  id: placement.id,
  name: placement.name,
  note: placement.note,
  version: placement.version,
  sentences: placement.sentences,
  createdAt: placement.createdAt,
};
type Row = { [Name in keyof typeof summaryColumns]: (typeof summaryColumns)[Name]['_']['data'] };

function summary({ id, name, note, version, sentences, createdAt }: Row): PlacementSummary {
  return { id, name, note, version, sentences: [...sentences], createdAt: createdAt.toISOString() };
}
