import type { Measured, ReportedValue, UncertaintyBasis, Unit } from '../domain/composition/types.ts';

/** One row as in the file. `number` is the row number a spreadsheet would show. */
export interface Row {
  readonly number: number;
  readonly cells: readonly string[];
  /** Indices of cells that hold a formula; their text is the result saved in the file. Absent: none. */
  readonly formulas?: readonly number[];
}

export const TABLE_KINDS = ['csv', 'tsv', 'xlsx', 'pasted'] as const;
export type TableKind = (typeof TABLE_KINDS)[number];

/** A file opened and proven readable. Rows are read again, in chunks, at every call of `chunks`. */
export interface Table {
  readonly kind: TableKind;
  readonly fileName: string | null;
  /** Names of a workbook's sheets, and the one that was read. */
  readonly sheets: readonly string[];
  readonly sheet: string | null;
  readonly encoding: string | null;
  readonly delimiter: string | null;
  /** Rows with at least one cell filled in. */
  readonly rowCount: number;
  readonly columnCount: number;
  /** The first and last rows with something in them, at most HEAD_ROWS and TAIL_ROWS of them. */
  readonly head: readonly Row[];
  readonly tail: readonly Row[];
  readonly chunks: () => Generator<readonly Row[]>;
  readonly warnings: readonly Problem[];
}

export interface ReadOptions {
  readonly fileName: string | null;
  /** Which sheet of a workbook; the first visible one otherwise. */
  readonly sheet?: string;
  /** Overrules what was found, for example `windows-1253`. */
  readonly encoding?: string;
}

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
export type ColumnRole = (typeof COLUMN_ROLES)[number];

/** How one column is read. In the long layout an `uncertainty` or `limit` belongs to the row's value: `of` is null. */
export interface ColumnChoice {
  readonly index: number;
  readonly role: ColumnRole;
  /** Canonical analyte of an `analyte` column. */
  readonly analyte: string | null;
  /**
   * Unit of an `analyte`, `total`, `loi` or `value` column; null where each row has its own. Of an `uncertainty` or
   * `limit` only where it differs from the unit of the values.
   */
  readonly unit: Unit | null;
  /** The column that an `uncertainty` or `limit` belongs to. */
  readonly of: number | null;
  /** What an `uncertainty` means. */
  readonly basis: UncertaintyBasis | null;
  /** The `uncertainty` is in per cent of the value. */
  readonly relative: boolean;
}

export interface ColumnUnderstanding extends ColumnChoice {
  /** Spreadsheet letter: A, B, … AA; the row's number in a sideways table. */
  readonly letter: string;
  readonly header: string;
  /** A plain sentence: how the column was understood, from what. */
  readonly why: string;
  /** False where a person should look. */
  readonly sure: boolean;
}

/**
 * `wide`: one analysis a row, one analyte a column. `long`: one value a row. `sideways`: one analyte a row, one
 * analysis a column; it is read turned, so that row and column numbers in the choices count the turned table's.
 */
export const LAYOUTS = ['wide', 'long', 'sideways'] as const;
export type Layout = (typeof LAYOUTS)[number];

export const SPECIMEN_KINDS = ['sherd', 'replica', 'material'] as const;
export type SpecimenKind = (typeof SPECIMEN_KINDS)[number];

/** What holds for every row whose file says nothing of it. */
export interface Defaults {
  readonly specimen: string | null;
  readonly group: string | null;
  readonly kind: SpecimenKind | null;
  readonly measured: Measured | null;
  readonly technique: string | null;
  readonly laboratory: string | null;
  readonly date: string | null;
  readonly source: string | null;
  readonly doi: string | null;
}

export const ABSENCE = ['belowDetection', 'notMeasured'] as const;
export type Absence = (typeof ABSENCE)[number];

/** Everything a person may settle before the rows are read. Plain JSON. Row numbers as in the file. */
export interface Choices {
  readonly layout: Layout;
  readonly headerRow: number;
  readonly unitsRow: number | null;
  /** Rows that hold each column's detection limit. */
  readonly limitRows: readonly number[];
  /** First row of analyses. */
  readonly firstRow: number;
  readonly decimal: '.' | ',';
  readonly columns: readonly ColumnChoice[];
  /** What `n.d.` means in this file: not detected, or not determined. */
  readonly nd: Absence;
  /** What a lone dash means. */
  readonly dash: Absence;
  /** A figure of 0: kept as reported (it counts as below detection where compared), or an error to be corrected. */
  readonly zero: 'belowDetection' | 'refuse';
  /** A negative figure: an error, or a laboratory's way to write "below this limit". */
  readonly negative: 'refuse' | 'limit';
  /** Formula cells among the columns that are used. */
  readonly formulas: 'refuse' | 'takeResult';
  readonly dateOrder: 'dayFirst' | 'monthFirst';
  /** An empty specimen cell repeats the one above (merged cells). */
  readonly fillDown: boolean;
  readonly defaults: Defaults;
  readonly leaveOutRows: readonly number[];
  /** Rows to read as analyses although they look like a summary (Mean, SD …). */
  readonly keepRows: readonly number[];
}

/** The part of the choices that fits another file with the same headers. Plain JSON, kept under `fingerprint`. */
export type RememberedChoices = Omit<
  Choices,
  'headerRow' | 'unitsRow' | 'limitRows' | 'firstRow' | 'leaveOutRows' | 'keepRows'
>;

/** A question the file leaves open, and which choice answers it. */
export interface Doubt {
  readonly about: keyof Choices | 'columns';
  readonly column: number | null;
  readonly message: string;
}

export interface Understanding {
  readonly fingerprint: string;
  /** The choices come from an earlier file with the same headers. */
  readonly remembered: boolean;
  readonly columns: readonly ColumnUnderstanding[];
  /** What `interpret` will be given unless somebody changes it. */
  readonly choices: Choices;
  readonly doubts: readonly Doubt[];
}

export interface Problem {
  /** An error stops the import as a whole; a warning does not. */
  readonly severity: 'error' | 'warning';
  readonly code: string;
  /** Names row and column, the requirement, and what was found. */
  readonly message: string;
  readonly row: number | null;
  readonly column: { readonly index: number; readonly letter: string; readonly header: string } | null;
}

/** One analysis as the file reports it. */
export interface DraftAnalysis {
  /** Rows of the file it was read from. */
  readonly rows: readonly number[];
  readonly specimen: string;
  readonly group: string | null;
  readonly kind: SpecimenKind | null;
  readonly spot: string | null;
  readonly measured: Measured;
  readonly technique: string | null;
  readonly laboratory: string | null;
  /** A day, YYYY-MM-DD; anything vaguer stays in `note`. */
  readonly date: string | null;
  readonly source: string | null;
  readonly doi: string | null;
  readonly note: string | null;
  readonly values: readonly ReportedValue[];
}

/** One step through the file. Repeated problems are listed up to a cap, then counted in the last part. */
export interface Part {
  readonly analyses: readonly DraftAnalysis[];
  readonly problems: readonly Problem[];
  readonly rowsRead: number;
  readonly rowCount: number;
}

/** What a page shows before anything is stored. */
export interface Preview {
  readonly kind: TableKind;
  readonly fileName: string | null;
  readonly sheets: readonly string[];
  readonly sheet: string | null;
  readonly encoding: string | null;
  readonly delimiter: string | null;
  readonly rowCount: number;
  readonly columnCount: number;
  readonly understanding: Understanding;
  /** Spreadsheet letters of the file's own columns, as many as are shown; of a sideways table too. */
  readonly letters: readonly string[];
  /** The first rows, as in the file. */
  readonly rows: readonly Row[];
  /** The first analyses, as they would be stored. */
  readonly analyses: readonly DraftAnalysis[];
  readonly counts: {
    readonly analyses: number;
    readonly specimens: number;
    readonly values: number;
    readonly belowDetection: number;
    readonly errors: number;
    readonly warnings: number;
  };
  readonly problems: readonly Problem[];
  /** No error stands in the way. */
  readonly importable: boolean;
}
