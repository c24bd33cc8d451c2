import { LOI, TOTAL } from '../domain/chemistry/analytes.ts';
import type { UncertaintyBasis, Unit } from '../domain/composition/types.ts';
import { readCell } from './cell.ts';
import { NUMBER_ROLES } from './roles.ts';
import type { Choices, ColumnChoice, ColumnRole, Row, Table } from './types.ts';

/** An uncertainty or limit column beside a column of figures. */
export interface Companion {
  readonly index: number;
  readonly unit: Unit | null;
  readonly basis: UncertaintyBasis | null;
  readonly relative: boolean;
}

/** A column of figures and all that belongs to it. */
export interface FigureColumn {
  readonly index: number;
  readonly role: 'analyte' | 'loi' | 'total' | 'value';
  /** Null in the long layout. */
  readonly analyte: string | null;
  readonly unit: Unit | null;
  readonly uncertainty: Companion | null;
  readonly limit: Companion | null;
  /** From the rows of detection limits. */
  readonly rowLimit: number | null;
  /** Decimals that most figures of a workbook's column show, where zeros at the end are not stored. */
  readonly decimals: number | null;
}

/** The choices made ready for reading rows. */
export interface Plan {
  readonly choices: Choices;
  readonly headers: readonly string[];
  /** Cells of the heading row, however many the file has there. */
  readonly width: number;
  readonly figures: readonly FigureColumn[];
  /** Columns of words by role, in order. */
  readonly words: ReadonlyMap<ColumnRole, readonly number[]>;
  /** Every column that is read: a formula in another does no harm. */
  readonly used: ReadonlySet<number>;
  readonly leaveOut: ReadonlySet<number>;
  readonly keep: ReadonlySet<number>;
  readonly limitRows: ReadonlySet<number>;
  /** Delimited rows all have as many cells as the heading row, unless something is wrong. */
  readonly checkWidth: boolean;
}

export function headersOf(table: Table, choices: Choices): readonly string[] {
  const header = table.head.find((r) => r.number === choices.headerRow)?.cells ?? [];
  const units = table.head.find((r) => r.number === choices.unitsRow)?.cells ?? [];
  const count = Math.max(header.length, table.columnCount);
  return Array.from({ length: count }, (_, i) =>
    [header[i] ?? '', units[i] ?? '']
      .map((c) => c.replace(/\s+/g, ' ').trim())
      .filter(Boolean)
      .join(' ')
      .slice(0, 80),
  );
}

/** Turns choices into a plan for reading rows. */
export function planOf(table: Table, choices: Choices): Plan {
  const words = new Map<ColumnRole, number[]>();
  for (const { role, index } of choices.columns)
    if (!NUMBER_ROLES.has(role) && role !== 'ignore') words.set(role, [...(words.get(role) ?? []), index]);
  const limits = limitRowsOf(table, choices);
  const figures = choices.columns.flatMap((c) => figureOf(c, { table, choices, limits }) ?? []);
  return {
    choices,
    headers: headersOf(table, choices),
    width: table.head.find((r) => r.number === choices.headerRow)?.cells.length ?? 0,
    figures,
    words,
    used: new Set(choices.columns.filter((c) => c.role !== 'ignore').map((c) => c.index)),
    leaveOut: new Set(choices.leaveOutRows),
    keep: new Set(choices.keepRows),
    limitRows: new Set(choices.limitRows),
    checkWidth: table.kind === 'csv' || table.kind === 'tsv',
  };
}

function limitRowsOf(table: Table, { limitRows }: Choices): readonly Row[] {
  if (limitRows.length === 0) return [];
  const known = [...table.head, ...table.tail].filter((r) => limitRows.includes(r.number));
  if (limitRows.every((n) => known.some((r) => r.number === n))) return known;
  return [...table.chunks()].flat().filter((r) => limitRows.includes(r.number));
}

interface Source {
  readonly table: Table;
  readonly choices: Choices;
  readonly limits: readonly Row[];
}

function figureOf(column: ColumnChoice, { table, choices, limits }: Source): FigureColumn | null {
  const { index, role, unit } = column;
  if (role !== 'analyte' && role !== 'loi' && role !== 'total' && role !== 'value') return null;
  const analyte =
    role === 'analyte' ? column.analyte : role === 'loi' ? LOI : role === 'total' ? TOTAL : null;
  const of = role === 'value' ? null : index;
  const companion = (kind: ColumnRole) => choices.columns.find((c) => c.role === kind && c.of === of) ?? null;
  return {
    ...{ index, role, analyte, unit },
    uncertainty: companion('uncertainty'),
    limit: companion('limit'),
    rowLimit: limitIn(limits, index, choices),
    decimals: table.kind === 'xlsx' ? usualDecimals(table, index, choices) : null,
  };
}

function limitIn(limits: readonly Row[], index: number, { decimal }: Choices): number | null {
  for (const row of limits) {
    const cell = readCell(row.cells[index] ?? '', decimal);
    if (cell.kind === 'number' && cell.value > 0) return cell.value;
    if (cell.kind === 'below' && cell.limit !== null) return cell.limit;
  }
  return null;
}

/** A workbook drops zeros at the end: 36.70 is stored as 36.7. The decimals of most cells tell what was meant. */
function usualDecimals(table: Table, index: number, { decimal, firstRow }: Choices): number | null {
  const counts = new Map<number, number>();
  for (const row of table.head) {
    if (row.number < firstRow) continue;
    const cell = readCell(row.cells[index] ?? '', decimal);
    if (cell.kind !== 'number') continue;
    const decimals = Math.max(0, -Math.round(Math.log10(cell.resolution)));
    counts.set(decimals, (counts.get(decimals) ?? 0) + 1);
  }
  const ranked = [...counts].sort(([d1, n1], [d2, n2]) => n2 - n1 || d2 - d1);
  return ranked[0]?.[0] ?? null;
}
