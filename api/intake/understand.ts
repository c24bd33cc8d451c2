import { createHash } from 'node:crypto';
import { readCell } from './cell.ts';
import type { Draft } from './columns.ts';
import { dateOrderOf } from './date.ts';
import { doubtsOf } from './doubts.ts';
import { figureCells } from './figure-cells.ts';
import { type DecimalMark, decimalEvidence } from './number.ts';
import { resolveColumns } from './resolve.ts';
import { settleUnits } from './settle-units.ts';
import { isSideways, type Structure, structureOf } from './structure.ts';
import { turn } from './turn.ts';
import type {
  Choices,
  ColumnChoice,
  ColumnUnderstanding,
  Defaults,
  RememberedChoices,
  Table,
  Understanding,
} from './types.ts';

export const NO_DEFAULTS: Defaults = {
  specimen: null,
  group: null,
  kind: null,
  measured: null,
  technique: null,
  laboratory: null,
  date: null,
  source: null,
  doi: null,
};

/**
 * How a table is understood: which row heads it, what each column holds and why, and what is left in doubt.
 * `remembered` are the choices made for an earlier file with the same fingerprint; `asked` overrules everything.
 */
export function understand(
  table: Table,
  remembered: RememberedChoices | null = null,
  asked: Partial<Choices> = {},
): Understanding {
  const wanted: Partial<Choices> = { ...remembered, ...asked };
  const sideways = wanted.layout === undefined ? isSideways(table) : wanted.layout === 'sideways';
  const upright = sideways ? turn(table) : table;
  const structure = structureOf(upright, sideways ? { ...wanted, layout: 'sideways' } : wanted);
  const drafts = resolveColumns(structure, upright.columnCount);
  const decimal = wanted.decimal ?? decimalOf(figureCells(structure, drafts), table.delimiter);
  settleUnits(drafts, decimal);
  const columns = drafts.map((draft) => settled(draft, asked.columns, remembered?.columns));
  const found = defaultChoices(structure, columns, decimal);
  const choices: Choices = {
    ...found,
    ...wanted,
    layout: structure.layout,
    columns: columns.map(choiceOf),
    defaults: { ...found.defaults, ...remembered?.defaults, ...asked.defaults },
  };
  return {
    fingerprint: fingerprintOf(drafts.map((d) => d.header)),
    remembered: remembered !== null,
    columns,
    choices,
    doubts: doubtsOf({ columns, choices, structure, table: upright }),
  };
}

/** The same for every file with these headings in this order, whatever their case and blanks. */
export function fingerprintOf(headers: readonly string[]): string {
  const plain = headers.map((h) => h.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim());
  while (plain.at(-1) === '') plain.pop();
  return createHash('sha256').update(JSON.stringify(plain)).digest('hex');
}

/** The part of the choices worth keeping for the next file with the same headings. */
export function rememberable(choices: Choices): RememberedChoices {
  const {
    headerRow: _h,
    unitsRow: _u,
    limitRows: _l,
    firstRow: _f,
    leaveOutRows: _o,
    keepRows: _k,
    ...rest
  } = choices;
  return rest;
}

/** The decimal mark that most figures show; a comma only with evidence. */
function decimalOf(cells: readonly string[], delimiter: string | null): DecimalMark {
  const seen = decimalEvidence(cells);
  if (seen.points + seen.commas > 0) return seen.commas > seen.points ? ',' : '.';
  return seen.eitherComma > 0 && seen.eitherPoint === 0 && delimiter !== ',' ? ',' : '.';
}

function settled(
  draft: Draft,
  asked: readonly ColumnChoice[] | undefined,
  remembered: readonly ColumnChoice[] | undefined,
): ColumnUnderstanding {
  const { reading: _, unitFrom: __, cells: ___, place: ____, ...found } = draft;
  const column = { ...found, analyte: found.role === 'analyte' ? found.analyte : null };
  const byAsking = asked?.find((c) => c.index === draft.index);
  const choice = byAsking ?? remembered?.find((c) => c.index === draft.index);
  if (!choice || same(choice, column)) return column;
  return { ...column, ...choiceOf(choice), why: byAsking ? CHOSEN : REMEMBERED, sure: true };
}

const CHOSEN = 'As chosen by hand.';
const REMEMBERED = 'As chosen for an earlier file with the same headings.';

function same(choice: ColumnChoice, column: ColumnChoice): boolean {
  return JSON.stringify(choiceOf(choice)) === JSON.stringify(choiceOf(column));
}

function choiceOf({ index, role, analyte, unit, of, basis, relative }: ColumnChoice): ColumnChoice {
  return { index, role, analyte, unit, of, basis, relative };
}

function defaultChoices(
  structure: Structure,
  columns: readonly ColumnUnderstanding[],
  decimal: DecimalMark,
): Choices {
  const inColumn = (role: string) => {
    const index = columns.find((c) => c.role === role)?.index ?? -1;
    return structure.sample.map((r) => r.cells[index] ?? '');
  };
  return {
    layout: structure.layout,
    headerRow: structure.header.number,
    unitsRow: structure.units?.number ?? null,
    limitRows: structure.limits.map((r) => r.number),
    firstRow: structure.firstRow,
    decimal,
    columns,
    nd: saysOtherwise(structure, columns, decimal) ? 'notMeasured' : 'belowDetection',
    dash: 'notMeasured',
    zero: 'belowDetection',
    negative: 'refuse',
    formulas: 'refuse',
    dateOrder: dateOrderOf(inColumn('date')) ?? 'dayFirst',
    fillDown: false,
    defaults: NO_DEFAULTS,
    leaveOutRows: [],
    keepRows: [],
  };
}

/** Where a file has its own spelling for "below detection", its n.d. more likely means "not determined". */
function saysOtherwise(
  structure: Structure,
  columns: readonly ColumnUnderstanding[],
  decimal: DecimalMark,
): boolean {
  const figures = columns.filter((c) => c.role === 'analyte' || c.role === 'value');
  return structure.sample.some((r) =>
    figures.some((c) => readCell(r.cells[c.index] ?? '', decimal).kind === 'below'),
  );
}
