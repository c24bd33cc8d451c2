import { z } from 'zod';
import { UNCERTAINTY_BASES } from '../domain/composition/types.ts';
import { measured, reportedValue, unit } from './analysis.ts';
import { specimenKind } from './specimen.ts';

/** How a file was understood, and what may be settled by hand before its rows are read. */
const index = z.number().int().min(0).max(10_000);
const rowNumber = z.number().int().min(1).max(10_000_000);
const rowNumbers = z.array(rowNumber).max(10_000);
const words = z.string().max(4_000).nullable();

export const COLUMN_ROLES = [
  'specimen',
  'group',
  'spot',
  'kind',
  'measured',
  'technique',
  'laboratory',
  'date',
  'source',
  'doi',
  'note',
  'analyte',
  'uncertainty',
  'limit',
  'total',
  'loi',
  'value',
  'unit',
  'analyteName',
  'ignore',
] as const;
const columnChoiceFields = {
  index,
  role: z.enum(COLUMN_ROLES),
  analyte: z.string().max(20).nullable(),
  unit: unit.nullable(),
  of: index.nullable(),
  basis: z.enum(UNCERTAINTY_BASES).nullable(),
  relative: z.boolean(),
};
export const columnChoice = z.object(columnChoiceFields).meta({ id: 'ColumnChoice' });

export const choices = z
  .object({
    layout: z.enum(['wide', 'long', 'sideways']),
    headerRow: rowNumber,
    unitsRow: rowNumber.nullable(),
    limitRows: rowNumbers,
    firstRow: rowNumber,
    decimal: z.enum(['.', ',']),
    columns: z.array(columnChoice).max(1_000),
    nd: z.enum(['belowDetection', 'notMeasured']),
    dash: z.enum(['belowDetection', 'notMeasured']),
    zero: z.enum(['belowDetection', 'refuse']),
    negative: z.enum(['refuse', 'limit']),
    formulas: z.enum(['refuse', 'takeResult']),
    dateOrder: z.enum(['dayFirst', 'monthFirst']),
    fillDown: z.boolean(),
    defaults: z.object({
      specimen: words,
      group: words,
      kind: specimenKind.nullable(),
      measured: measured.nullable(),
      technique: words,
      laboratory: words,
      date: words,
      source: words,
      doi: words,
    }),
    leaveOutRows: rowNumbers,
    keepRows: rowNumbers,
  })
  .meta({ id: 'ImportChoices' });

/** Choices as they are sent back: only those that overrule what was understood need be there. */
export const choicesAsked = choices
  .partial()
  .extend({ defaults: choices.shape.defaults.partial().optional() })
  .meta({ id: 'ImportChoicesAsked' });

const understanding = z
  .object({
    fingerprint: z.string(),
    remembered: z.boolean(),
    columns: z.array(
      z.object({
        ...columnChoiceFields,
        letter: z.string(),
        header: z.string(),
        why: z.string(),
        sure: z.boolean(),
      }),
    ),
    choices,
    doubts: z.array(
      z.object({ about: z.string(), column: z.number().int().nullable(), message: z.string() }),
    ),
  })
  .meta({ id: 'Understanding' });

export const importProblem = z
  .object({
    severity: z.enum(['error', 'warning']),
    code: z.string(),
    message: z.string(),
    row: z.number().int().nullable(),
    column: z.object({ index: z.number().int(), letter: z.string(), header: z.string() }).nullable(),
  })
  .meta({ id: 'ImportProblem' });

const draftAnalysis = z
  .object({
    rows: z.array(z.number().int()),
    specimen: z.string(),
    group: z.string().nullable(),
    kind: specimenKind.nullable(),
    spot: z.string().nullable(),
    measured,
    technique: z.string().nullable(),
    laboratory: z.string().nullable(),
    date: z.string().nullable(),
    source: z.string().nullable(),
    doi: z.string().nullable(),
    note: z.string().nullable(),
    values: z.array(reportedValue),
  })
  .meta({ id: 'DraftAnalysis' });

export const preview = z
  .object({
    kind: z.enum(['csv', 'tsv', 'xlsx', 'pasted']),
    fileName: z.string().nullable(),
    sheets: z.array(z.string()),
    sheet: z.string().nullable(),
    encoding: z.string().nullable(),
    delimiter: z.string().nullable(),
    rowCount: z.number().int(),
    columnCount: z.number().int(),
    letters: z.array(z.string()),
    understanding,
    rows: z.array(
      z.object({
        number: z.number().int(),
        cells: z.array(z.string()),
        formulas: z.array(z.number().int()).optional(),
      }),
    ),
    analyses: z.array(draftAnalysis),
    counts: z.object({
      analyses: z.number().int(),
      specimens: z.number().int(),
      values: z.number().int(),
      belowDetection: z.number().int(),
      errors: z.number().int(),
      warnings: z.number().int(),
    }),
    problems: z.array(importProblem),
    importable: z.boolean(),
  })
  .meta({ id: 'ImportPreview' });

export type Choices = z.infer<typeof choices>;
export type Preview = z.infer<typeof preview>;
export type ImportProblem = z.infer<typeof importProblem>;
