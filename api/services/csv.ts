import Papa from 'papaparse';

export type Cell = string | number | boolean | null;

/** What a spreadsheet would run as a formula; papaparse's own pattern misses cells of several lines. */
const FORMULA = /^[=+\-@\t\r]/;

/** A table as CSV that spreadsheets open as text and numbers: byte order mark, and formulas disarmed by a quote. */
export function toCsv(columns: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const data = rows.map((row) => [...row]);
  return `\ufeff${Papa.unparse({ fields: [...columns], data }, { newline: '\r\n', escapeFormulae: FORMULA })}\r\n`;
}
