import { and, eq, isNotNull, isNull, type SQL, sql } from 'drizzle-orm';
import {
  zone as tileZone,
  visibleAnalysis,
  visibleSpecimen,
  visibleWareGroup,
} from '../../db/schema/schema.ts';
import type { Analysis, AnalysisQuery } from '../contract/analysis.ts';
import type { ReportedValue } from '../domain/composition/types.ts';
import type { Caller } from './access.ts';
import { everyWord } from './search.ts';

const columns = {
  id: visibleAnalysis.id,
  specimen: visibleAnalysis.specimenId,
  specimenLabel: visibleSpecimen.label,
  zone: visibleAnalysis.zoneId,
  zoneLabel: tileZone.label,
  measured: visibleAnalysis.measured,
  technique: visibleAnalysis.technique,
  laboratory: visibleAnalysis.laboratory,
  instrument: visibleAnalysis.instrument,
  date: visibleAnalysis.date,
  source: visibleAnalysis.source,
  doi: visibleAnalysis.doi,
  spot: visibleAnalysis.spot,
  note: visibleAnalysis.note,
  reported: visibleAnalysis.reported,
  firstReported: visibleAnalysis.firstReported,
  import: visibleAnalysis.importId,
  row: visibleAnalysis.row,
  createdAt: visibleAnalysis.createdAt,
  updatedAt: visibleAnalysis.updatedAt,
};
export const sorting = {
  specimen: visibleSpecimen.labelOrder,
  measured: visibleAnalysis.measured,
  technique: visibleAnalysis.technique,
  laboratory: sql`lower(${visibleAnalysis.laboratory})`,
  date: visibleAnalysis.date,
  createdAt: visibleAnalysis.createdAt,
};
export const ofSpecimen = eq(visibleSpecimen.id, visibleAnalysis.specimenId);
export const ofGroup = eq(visibleWareGroup.id, visibleSpecimen.wareGroupId);
const ofZone = eq(tileZone.id, visibleAnalysis.zoneId);

/** Analyses with the names of what they were made of. */
export function rowsOf({ db }: Caller) {
  return db
    .select(columns)
    .from(visibleAnalysis)
    .innerJoin(visibleSpecimen, ofSpecimen)
    .leftJoin(visibleWareGroup, ofGroup)
    .leftJoin(tileZone, ofZone);
}

/** What a list is asked for. */
export function wanted(studyId: string, query: AnalysisQuery): SQL | undefined {
  const { laboratory, source, note, spot } = visibleAnalysis;
  const { label, catalogueNumber, wareGroupId } = visibleSpecimen;
  return and(
    eq(visibleAnalysis.studyId, studyId),
    query.specimen ? eq(visibleAnalysis.specimenId, query.specimen) : undefined,
    query.measured ? eq(visibleAnalysis.measured, query.measured) : undefined,
    query.zone ? isNotNull(visibleAnalysis.zoneId) : undefined,
    query.group === 'none' ? isNull(wareGroupId) : undefined,
    query.group && query.group !== 'none' ? eq(wareGroupId, query.group) : undefined,
    everyWord(query.search, [label, catalogueNumber, visibleWareGroup.name, laboratory, source, note, spot]),
  );
}

type Row = Awaited<ReturnType<typeof rowsOf>>[number];

export function answer(row: Row): Analysis {
  return {
    ...row,
    reported: row.reported as ReportedValue[],
    firstReported: row.firstReported as ReportedValue[] | null,
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  };
}
