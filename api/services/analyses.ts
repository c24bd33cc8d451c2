import { isDeepStrictEqual } from 'node:util';
import { and, asc, count, desc, eq } from 'drizzle-orm';
import {
  analysis,
  zone as tileZone,
  visibleAnalysis,
  visibleSpecimen,
  visibleWareGroup,
} from '../../db/schema/schema.ts';
import type {
  Analysis,
  AnalysisChange,
  AnalysisQuery,
  NewAnalysis,
  Normalised,
} from '../contract/analysis.ts';
import { normaliseAnalysis } from '../domain/composition/normalise.ts';
import type { NormalisationSettings, ReportedValue } from '../domain/composition/types.ts';
import { type Caller, requireStudy } from './access.ts';
import { answer, ofGroup, ofSpecimen, rowsOf, sorting, wanted } from './analysis-rows.ts';
import { Failure, found } from './failure.ts';
import { readLookups } from './lookups.ts';
import { checkedValues } from './reported-values.ts';

export async function listAnalyses(caller: Caller, studyId: string, query: AnalysisQuery) {
  await requireStudy(caller, studyId);
  const where = wanted(studyId, query);
  const order = query.direction === 'asc' ? asc : desc;
  const [total, rows] = await Promise.all([
    caller.db
      .select({ n: count() })
      .from(visibleAnalysis)
      .innerJoin(visibleSpecimen, ofSpecimen)
      .leftJoin(visibleWareGroup, ofGroup)
      .where(where),
    rowsOf(caller)
      .where(where)
      .orderBy(
        order(sorting[query.sort]),
        visibleSpecimen.labelOrder,
        visibleAnalysis.row,
        visibleAnalysis.id,
      )
      .offset(query.offset)
      .limit(query.limit),
  ]);
  return { total: total[0]!.n, offset: query.offset, rows: rows.map(answer) };
}

export async function createAnalysis(caller: Caller, studyId: string, wish: NewAnalysis): Promise<Analysis> {
  await requireStudy(caller, studyId);
  await requireSpecimen(caller, studyId, wish.specimen);
  await requireTechnique(caller, wish.technique);
  await requireZone(caller, wish.specimen, wish.zone);
  const { specimen, reported, zone: zoneId, ...fields } = wish;
  const values = { ...fields, studyId, specimenId: specimen, zoneId, reported: checkedValues(reported) };
  const [row] = await caller.db.insert(analysis).values(values).returning({ id: analysis.id });
  return readAnalysis(caller, studyId, row!.id);
}

export async function readAnalysis(caller: Caller, studyId: string, analysisId: string): Promise<Analysis> {
  await requireStudy(caller, studyId);
  const [row] = await rowsOf(caller).where(
    and(eq(visibleAnalysis.studyId, studyId), eq(visibleAnalysis.id, analysisId)),
  );
  return answer(found(row, 'the analysis'));
}

export async function changeAnalysis(
  caller: Caller,
  studyId: string,
  { analysisId, change }: { analysisId: string; change: AnalysisChange },
): Promise<Analysis> {
  const before = await readAnalysis(caller, studyId, analysisId);
  await requireTechnique(caller, change.technique ?? null);
  await requireZone(caller, before.specimen, change.zone ?? null);
  const { reported, zone: zoneId, ...rest } = change;
  const fields = zoneId === undefined ? rest : { ...rest, zoneId };
  const values =
    reported === undefined ? fields : { ...fields, ...corrected(before, checkedValues(reported)) };
  await caller.db
    .update(analysis)
    .set({ ...values, updatedAt: new Date() })
    .where(eq(analysis.id, analysisId));
  return readAnalysis(caller, studyId, analysisId);
}

/** The figures as corrected, and beside them for good what was entered first. */
function corrected({ reported: before, firstReported }: Analysis, reported: ReportedValue[]) {
  return isDeepStrictEqual(before, reported) ? {} : { reported, firstReported: firstReported ?? before };
}

export async function deleteAnalysis(caller: Caller, studyId: string, analysisId: string): Promise<void> {
  await readAnalysis(caller, studyId, analysisId);
  await caller.db.delete(analysis).where(eq(analysis.id, analysisId));
}

/** One analysis in oxides, with every step from the figure reported to the figure used. */
export async function normaliseOne(
  caller: Caller,
  studyId: string,
  { analysisId, settings }: { analysisId: string; settings: NormalisationSettings },
): Promise<Normalised> {
  const { reported } = await readAnalysis(caller, studyId, analysisId);
  return normaliseAnalysis(reported, settings) as Normalised;
}

async function requireSpecimen(caller: Caller, studyId: string, specimen: string): Promise<void> {
  const [row] = await caller.db
    .select({ id: visibleSpecimen.id })
    .from(visibleSpecimen)
    .where(and(eq(visibleSpecimen.studyId, studyId), eq(visibleSpecimen.id, specimen)));
  if (row === undefined) refuse('specimen', 'the specimen must exist in this study; it does not.');
}

async function requireZone({ db }: Caller, specimen: string, zone: string | null): Promise<void> {
  if (zone === null) return;
  const [row] = await db.select({ tile: tileZone.tileId }).from(tileZone).where(eq(tileZone.id, zone));
  if (row?.tile !== specimen)
    refuse('zone', 'a zone must be one of the specimen that was measured; it is not.');
}

async function requireTechnique(caller: Caller, code: string | null): Promise<void> {
  if (code === null) return;
  const { techniques } = await readLookups(caller);
  if (techniques.some((technique) => technique.code === code)) return;
  const known = techniques.map((technique) => technique.code).join(', ');
  refuse('technique', `a technique must be one of ${known}; “${code}” is not.`);
}

function refuse(at: string, message: string): never {
  throw new Failure('invalid', message, [{ at, message }]);
}
