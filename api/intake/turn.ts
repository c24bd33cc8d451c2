import { RequirementError } from '../domain/requirement.ts';
import { MAX_COLUMNS } from './limits.ts';
import type { Row, Table } from './types.ts';

/** A table with rows and columns exchanged: column index i is the file's row i + 1, row n its column n. */
export function turn(table: Table): Table {
  const rows = [...table.chunks()].flat();
  const last = rows.at(-1)?.number ?? 0;
  if (last > MAX_COLUMNS)
    throw new RequirementError(
      `a table with its analytes down the side may have at most ${MAX_COLUMNS} rows; this one has ${last}`,
    );
  const turned = Array.from({ length: table.columnCount }, (_, column) =>
    turnedRow(rows, column, last),
  ).filter((row) => row.cells.some((c) => c.trim() !== ''));
  return {
    ...table,
    rowCount: turned.length,
    columnCount: last,
    head: turned,
    tail: turned,
    chunks: function* () {
      yield turned;
    },
  };
}

function turnedRow(rows: readonly Row[], column: number, length: number): Row {
  const cells = new Array<string>(length).fill('');
  for (const row of rows) cells[row.number - 1] = row.cells[column] ?? '';
  const formulas = rows.filter((r) => r.formulas?.includes(column)).map((r) => r.number - 1);
  return formulas.length > 0 ? { number: column + 1, cells, formulas } : { number: column + 1, cells };
}
