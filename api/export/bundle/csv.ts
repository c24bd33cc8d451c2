import Papa from 'papaparse';

export type Field =
  | { readonly name: string; readonly type: 'string' | 'number' | 'boolean' }
  | { readonly name: string; readonly type: 'string'; readonly nullable: true };
export type Cell = string | number | boolean | null;

/**
 * Text that a spreadsheet would run as a formula is kept from it by a quote in front; text that begins so by itself
 * gets one more, so that taking one off always gives back what was there.
 */
const FORMULA = /^'*[=+\-@\t\r]/;
const QUOTED = /^''*[=+\-@\t\r]/;

/** A table as CSV without a byte order mark, numbers in full. */
export function writeCsv(fields: readonly Field[], rows: readonly (readonly Cell[])[]): string {
  const safe = (cell: Cell) => (typeof cell === 'string' && FORMULA.test(cell) ? `'${cell}` : cell);
  const data = rows.map((row) => row.map(safe));
  return `${Papa.unparse({ fields: fields.map(({ name }) => name), data }, { newline: '\r\n' })}\r\n`;
}

/** The rows of such a table by column name, as they were before they were written; throws words on what is none. */
export function readCsv(fields: readonly Field[], text: string): Record<string, Cell>[] {
  const { data, errors } = Papa.parse<string[]>(text, { newline: '\r\n', skipEmptyLines: 'greedy' });
  const [header = [], ...rows] = data;
  if (errors.length > 0) throw new Error(`row ${errors[0]!.row ?? 0}: ${errors[0]!.message}`);
  if (header.join() !== fields.map(({ name }) => name).join())
    throw new Error(`its columns are ${header.slice(0, 20).join(', ')}`);
  return rows.map((row, at) => {
    if (row.length !== fields.length) throw new Error(`row ${at + 1} has ${row.length} cells`);
    return Object.fromEntries(fields.map((field, i) => [field.name, cellOf(field, row[i]!)]));
  });
}

function cellOf(field: Field, text: string): Cell {
  if (field.type === 'string') {
    if (text === '' && 'nullable' in field) return null;
    return QUOTED.test(text) ? text.slice(1) : text;
  }
  if (text === '') return null;
  if (field.type === 'boolean') {
    if (text !== 'true' && text !== 'false') throw new Error(`${field.name} is ${text.slice(0, 40)}`);
    return text === 'true';
  }
  const number = Number(text);
  if (!Number.isFinite(number)) throw new Error(`${field.name} is ${text.slice(0, 40)}`);
  return number;
}
