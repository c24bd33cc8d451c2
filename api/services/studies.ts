import { and, desc, eq, inArray, isNotNull } from 'drizzle-orm';
import {
  batch,
  firing,
  placement,
  share,
  study,
  tile,
  visibleAnalysis,
  visibleSpecimen,
  visibleWareGroup,
  zone,
} from '../../db/schema/schema.ts';
import type { NewStudy, Study, StudyChange } from '../contract/study.ts';
import { type Caller, requireStudy } from './access.ts';

export async function listStudies(caller: Caller): Promise<Study[]> {
  const rows = await counted(caller).orderBy(desc(study.createdAt), study.id);
  return rows.map(answer);
}

export async function createStudy(caller: Caller, wanted: NewStudy): Promise<Study> {
  const [row] = await caller.db.insert(study).values(wanted).returning({ id: study.id });
  return readStudy(caller, row!.id);
}

export async function readStudy(caller: Caller, studyId: string): Promise<Study> {
  await requireStudy(caller, studyId);
  const [row] = await counted(caller).where(eq(study.id, studyId));
  return answer(row!);
}

export async function changeStudy(caller: Caller, studyId: string, change: StudyChange): Promise<Study> {
  await requireStudy(caller, studyId);
  await caller.db
    .update(study)
    .set({ ...change, updatedAt: new Date() })
    .where(eq(study.id, studyId));
  return readStudy(caller, studyId);
}

/** Removes a study and everything that belongs to it. */
export async function deleteStudy(caller: Caller, studyId: string): Promise<void> {
  await requireStudy(caller, studyId);
  await caller.db.delete(study).where(eq(study.id, studyId));
}

function counted({ db }: Caller) {
  const specimens = eq(visibleSpecimen.studyId, study.id);
  const tiles = db.select({ id: tile.specimenId }).from(tile).where(eq(tile.studyId, study.id));
  return db
    .select({
      study,
      groups: db.$count(visibleWareGroup, eq(visibleWareGroup.studyId, study.id)),
      specimens: db.$count(visibleSpecimen, specimens),
      replicas: db.$count(visibleSpecimen, and(specimens, eq(visibleSpecimen.kind, 'replica'))),
      analyses: db.$count(visibleAnalysis, eq(visibleAnalysis.studyId, study.id)),
      placements: db.$count(placement, eq(placement.studyId, study.id)),
      batches: db.$count(batch, eq(batch.studyId, study.id)),
      tiles: db.$count(tile, eq(tile.studyId, study.id)),
      judged: db.$count(zone, and(isNotNull(zone.grade), inArray(zone.tileId, tiles))),
      firings: db.$count(firing, eq(firing.studyId, study.id)),
      shares: db.$count(share, eq(share.studyId, study.id)),
    })
    .from(study);
}

type Counted = Awaited<ReturnType<typeof counted>>[number];

function answer({ study: row, ...counts }: Counted): Study {
  return {
    ...row,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
    counts,
  };
}
