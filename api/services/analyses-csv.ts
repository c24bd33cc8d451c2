import { asc, eq } from 'drizzle-orm';
import { visibleAnalysis, visibleSpecimen, visibleWareGroup } from '../../db/schema/schema.ts';
import { ANALYTES } from '../domain/chemistry/analytes.ts';
import { byDisplayOrder } from '../domain/chemistry/oxides.ts';
import { normaliseAnalysis } from '../domain/composition/normalise.ts';
import {
  DEFAULT_NORMALISATION,
  type NormalisedAnalysis,
  type ReportedValue,
} from '../domain/composition/types.ts';
import { type Caller, requireStudy } from './access.ts';
import { type Cell, toCsv } from './csv.ts';
import { attempt } from './failure.ts';

export const CSV_FIGURES = ['reported', 'normalised'] as const;
export type CsvFigures = (typeof CSV_FIGURES)[number];

/**
 * Every analysis of a study, one a row. `reported`: each figure in its own unit, as the laboratory gave it; the table
 * can be brought in again. `normalised`: oxides closed to 100 in the default forms, with the raw total.
 */
export async function analysesCsv(caller: Caller, studyId: string, figures: CsvFigures): Promise<string> {
  await requireStudy(caller, studyId);
  const rows = await rowsOf(caller, studyId);
  const table = figures === 'reported' ? reportedTable(rows) : normalisedTable(rows);
  const cells = rows.map((row, index) => [...aboutCells(row), ...table.cells(row, index)]);
  return toCsv([...ABOUT, ...table.columns], cells);
}

const ABOUT = [
  ...['Specimen', 'Catalogue number', 'Kind', 'Ware group', 'Measured', 'Spot', 'Technique'],
  ...['Laboratory', 'Date', 'Source', 'DOI', 'Note'],
];
const aboutCells = (row: Row): Cell[] => [
  ...[row.label, row.catalogueNumber, row.kind, row.group, row.measured, row.spot, row.technique],
  ...[row.laboratory, row.date, row.source, row.doi, row.note],
];

type Row = Awaited<ReturnType<typeof rowsOf>>[number];

function rowsOf({ db }: Caller, studyId: string) {
  return db
    .select({
      label: visibleSpecimen.label,
      catalogueNumber: visibleSpecimen.catalogueNumber,
      kind: visibleSpecimen.kind,
      group: visibleWareGroup.name,
      measured: visibleAnalysis.measured,
      spot: visibleAnalysis.spot,
      technique: visibleAnalysis.technique,
      laboratory: visibleAnalysis.laboratory,
      date: visibleAnalysis.date,
      source: visibleAnalysis.source,
      doi: visibleAnalysis.doi,
      note: visibleAnalysis.note,
      reported: visibleAnalysis.reported,
    })
    .from(visibleAnalysis)
    .innerJoin(visibleSpecimen, eq(visibleSpecimen.id, visibleAnalysis.specimenId))
    .leftJoin(visibleWareGroup, eq(visibleWareGroup.id, visibleSpecimen.wareGroupId))
    .where(eq(visibleAnalysis.studyId, studyId))
    .orderBy(asc(visibleSpecimen.labelOrder), visibleAnalysis.row, visibleAnalysis.id);
}

interface Table {
  readonly columns: readonly string[];
  readonly cells: (row: Row, index: number) => Cell[];
}

const ORDER = new Map(ANALYTES.map((analyte, index) => [analyte, index]));
const orderOf = (analyte: string) => ORDER.get(analyte) ?? ORDER.size;
const valueHeader = ({ analyte, unit }: ReportedValue) => `${analyte} (${unit})`;
const errorHeader = ({ analyte, unit, basis }: ReportedValue) =>
  `${analyte} ± ${basis === null || basis === 'unstated' ? '' : `${basis} `}(${unit})`;

function reportedTable(rows: readonly Row[]): Table {
  const found = new Map<string, { order: number; cell: (value: ReportedValue) => Cell }>();
  for (const row of rows)
    for (const value of row.reported as readonly ReportedValue[]) {
      const order = orderOf(value.analyte);
      found.set(valueHeader(value), { order, cell: asWritten });
      if (value.uncertainty !== null)
        found.set(errorHeader(value), { order: order + 0.5, cell: (v) => v.uncertainty });
    }
  const columns = [...found.keys()].sort(
    (a, b) => found.get(a)!.order - found.get(b)!.order || (a < b ? -1 : 1),
  );
  const cells = (row: Row) => {
    const filled = new Map<string, Cell>();
    for (const value of row.reported as readonly ReportedValue[]) {
      filled.set(valueHeader(value), asWritten(value));
      if (value.uncertainty !== null) filled.set(errorHeader(value), value.uncertainty);
    }
    return columns.map((column) => filled.get(column) ?? null);
  };
  return { columns, cells };
}

/** With the digits the laboratory wrote: 36.70 where the last digit counts hundredths. */
function asWritten({ value, belowDetection, limit, resolution }: ReportedValue): Cell {
  if (belowDetection || value === null) return limit === null ? 'bdl' : `<${limit}`;
  const digits = resolution === null ? 0 : Math.max(0, Math.round(-Math.log10(resolution)));
  const text = value.toFixed(Math.min(digits, 12));
  return value >= 0 && Number(text) === value ? text : value;
}

function normalisedTable(rows: readonly Row[]): Table {
  const results = rows.map((row) =>
    attempt(() => normaliseAnalysis(row.reported as readonly ReportedValue[], DEFAULT_NORMALISATION)),
  );
  const oxides = [
    ...new Set(results.flatMap((result) => ('value' in result ? Object.keys(result.value.closed) : []))),
  ].sort(byDisplayOrder);
  return {
    columns: ['Raw total (wt%)', ...oxides.map((oxide) => `${oxide} (wt%)`), 'Left out because'],
    cells: (_row, index) => normalisedCells(results[index]!, oxides),
  };
}

function normalisedCells(
  result: { value: NormalisedAnalysis } | { reason: string },
  oxides: readonly string[],
): Cell[] {
  if ('reason' in result) return [null, ...oxides.map(() => null), result.reason];
  const { rawTotal, closed } = result.value;
  const amounts = oxides.map((oxide): Cell => {
    const amount = closed[oxide];
    if (amount === undefined) return null;
    return amount.value ?? (amount.limit === null ? 'bdl' : `<${amount.limit}`);
  });
  return [rawTotal, ...amounts, null];
}
