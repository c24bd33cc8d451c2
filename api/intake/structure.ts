import { ANALYTES } from '../domain/chemistry/analytes.ts';
import type { Unit } from '../domain/composition/types.ts';
import { type HeaderReading, readHeader } from './header.ts';
import type { Choices, Layout, Row, Table } from './types.ts';
import { findUnit } from './units.ts';
import { headingOf, rowNameOf } from './words.ts';

/** Where a table keeps its headings, units, limits and analyses. */
export interface Structure {
  readonly layout: Layout;
  readonly header: Row;
  readonly units: Row | null;
  /** A row of units above the headings, each standing over the columns up to the next. */
  readonly block: Row | null;
  /** A unit that a title names for the whole table. */
  readonly titleUnit: Unit | null;
  readonly limits: readonly Row[];
  readonly firstRow: number;
  /** Sample rows of analyses. */
  readonly sample: readonly Row[];
}

const LOOK_AT = 60;
/** Begins like a figure, whatever follows: `0.4 ± 0.1`, `<0.05`. */
const FIGURE = /^[<>≤+−-]?\s?\d/;
const NUMBER = /^[<>≤±+−-]?\s*\d[\d.,'\s]*(?:e[+-]?\d+)?%?$/i;

/** Finds the structure of a wide or long table; what a person asked for comes first. */
export function structureOf(table: Table, asked: Partial<Choices>): Structure {
  const rows = table.head;
  const header = rows.find((r) => r.number === asked.headerRow) ?? headerIn(rows.slice(0, LOOK_AT));
  const at = rows.indexOf(header);
  const after = rows.slice(at + 1);
  const units =
    asked.unitsRow === undefined
      ? unitsIn(header, after[0])
      : (rows.find((r) => r.number === asked.unitsRow) ?? null);
  const firstRow = asked.firstRow ?? Math.max(header.number, units?.number ?? 0) + 1;
  const body = [...after, ...table.tail.filter((t) => !rows.some((r) => r.number === t.number))];
  const below = body.filter((r) => r.number >= firstRow);
  const limits = limitsIn(below, asked);
  return {
    layout: asked.layout ?? (isLong(header) ? 'long' : 'wide'),
    header,
    units,
    ...unitsAbove(rows.slice(0, at)),
    limits,
    firstRow,
    sample: below.filter((r) => !limits.includes(r)),
  };
}

/** Analytes down the side, figures beside them: no row names two, and where only two are named none stands elsewhere. */
export function isSideways(table: Table): boolean {
  const rows = table.head.slice(0, LOOK_AT);
  if (table.columnCount < 2 || rows.some((r) => analytesIn(r) > 1) || isLong(headerIn(rows))) return false;
  const all = rows.reduce((sum, r) => sum + analytesIn(r), 0);
  const withFigures = rows.filter((r) => r.cells.some((c) => FIGURE.test(c.trim())));
  return [0, 1, 2].some((i) => {
    const namedIn = (some: readonly Row[]) =>
      some.map((r) => analyteName(r.cells[i] ?? '')).filter((name) => name !== null);
    const different = new Set(namedIn(withFigures)).size;
    return different >= 3 || (different === 2 && namedIn(rows).length === all);
  });
}

function headerIn(rows: readonly Row[]): Row {
  const scores = rows.map(headerScore);
  return rows[scores.indexOf(Math.max(...scores))]!;
}

function headerScore(row: Row): number {
  const filled = row.cells.filter((c) => c.trim() !== '');
  const analytes = analytesIn(row);
  const words = filled.filter((c) => headingOf(c) !== null || isBare(c)).length;
  const numbers = filled.filter((c) => NUMBER.test(c.trim())).length;
  return (analytes > 1 ? 3 * analytes : analytes) + words - numbers / 2;
}

function analytesIn(row: Row): number {
  return row.cells.filter((cell) => analyteName(cell) !== null).length;
}

function analyteName(cell: string): string | null {
  return cell.length > 60 ? null : readHeader(cell).analyte;
}

function isBare(cell: string): boolean {
  return cell.length < 30 && !NUMBER.test(cell.trim()) && readHeader(cell).bare && cell.trim() !== '';
}

function isLong(header: Row): boolean {
  const roles = new Set(header.cells.map((c) => headingOf(c)?.role));
  const hasValue = roles.has('value') || header.cells.some((c) => isBare(c) && readHeader(c).unit !== null);
  const oxides = header.cells.filter((c) => ANALYTES.includes(analyteName(c) ?? '')).length;
  return roles.has('analyteName') && hasValue && oxides < 2;
}

/** A row right below the headings that holds units or words like ± and mean, and no figure. */
function unitsIn(header: Row, next: Row | undefined): Row | null {
  if (!next || next.number !== header.number + 1) return null;
  const filled = next.cells.filter((c) => c.trim() !== '');
  if (filled.some((c) => NUMBER.test(c.trim())) || rowNameOf(next.cells[0] ?? '') === 'limit') return null;
  const bare = filled.filter((c) => isBare(c) && readingIsUseful(readHeader(c)));
  return bare.length > 0 && bare.length >= filled.length / 2 ? next : null;
}

function readingIsUseful(reading: HeaderReading): boolean {
  return reading.unit !== null || reading.foreignUnit !== null || reading.statistic !== null;
}

function unitsAbove(rows: readonly Row[]): Pick<Structure, 'block' | 'titleUnit'> {
  const above = rows.at(-1);
  const block =
    above && above.cells.findIndex((c) => findUnit(c.normalize('NFKC')).unit !== null) > 0 ? above : null;
  const titles = rows.filter((r) => r !== block).flatMap((r) => r.cells.map((c) => unitNamed(c)));
  const named = new Set(titles.filter((u) => u !== null));
  return { block, titleUnit: named.size === 1 ? [...named][0]! : null };
}

/** A title's lone per cent sign is no unit: it may belong to anything. */
function unitNamed(title: string): Unit | null {
  const { unit, signOnly } = findUnit(title.normalize('NFKC'));
  return signOnly ? null : unit;
}

function limitsIn(rows: readonly Row[], asked: Partial<Choices>): readonly Row[] {
  if (asked.limitRows) return rows.filter((r) => asked.limitRows!.includes(r.number));
  return rows.filter((r) => rowNameOf(r.cells.find((c) => c.trim() !== '') ?? '') === 'limit');
}
