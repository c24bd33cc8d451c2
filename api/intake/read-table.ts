import { RequirementError } from '../domain/requirement.ts';
import { decode } from './decode.ts';
import { chooseDelimiter, delimitedChunks, tabsForBlanks, unhurried } from './delimited.ts';
import { HEAD_ROWS, MAX_COLUMNS, MAX_FILE_BYTES, MAX_ROWS, TAIL_ROWS } from './limits.ts';
import { sniff } from './sniff.ts';
import type { Problem, ReadOptions, Row, Table } from './types.ts';
import { widthOf } from './width.ts';
import { openArchive } from './workbook/archive.ts';
import { readBook, type SheetEntry } from './workbook/book.ts';
import { readSheet, tooWide } from './workbook/sheet.ts';

type Opened = Omit<Table, 'rowCount' | 'columnCount' | 'head' | 'tail'>;

/** Opens a file as a table, by its content; throws a RequirementError that says what it is where it is none. */
export async function readTable(bytes: Uint8Array, options: ReadOptions): Promise<Table> {
  if (bytes.length > MAX_FILE_BYTES)
    throw new RequirementError(
      `a file may have at most ${megabytes(MAX_FILE_BYTES)} MB; this one has ${megabytes(bytes.length)} MB`,
    );
  if (bytes.length === 0)
    throw new RequirementError('a table needs at least a header row; this file is empty');
  return survey(sniff(bytes) === 'zip' ? await openWorkbook(bytes, options) : openText(bytes, options));
}

/** Opens a table pasted as text. */
export async function readPasted(text: string): Promise<Table> {
  const bytes = Buffer.byteLength(text);
  if (bytes > MAX_FILE_BYTES)
    throw new RequirementError(
      `a pasted table may have at most ${megabytes(MAX_FILE_BYTES)} MB; this one has ${megabytes(bytes)} MB`,
    );
  const body = tabsForBlanks(text.replace(/^\ufeff/, ''));
  const delimiter = chooseDelimiter(body);
  return survey({
    ...nameless,
    kind: 'pasted',
    encoding: null,
    delimiter,
    chunks: () => delimitedChunks(body, delimiter),
    warnings: [],
  });
}

const nameless = { fileName: null, sheets: [], sheet: null };

function openText(bytes: Uint8Array, { fileName, encoding }: ReadOptions): Opened {
  const decoded = decode(bytes, encoding);
  const delimiter = chooseDelimiter(decoded.text);
  return {
    ...nameless,
    fileName,
    kind: delimiter === '\t' ? 'tsv' : 'csv',
    encoding: decoded.encoding,
    delimiter,
    chunks: () => delimitedChunks(decoded.text, delimiter),
    warnings: decoded.warning === null ? [] : [warning('encoding', decoded.warning)],
  };
}

async function openWorkbook(bytes: Uint8Array, { fileName, sheet: asked }: ReadOptions): Promise<Opened> {
  const archive = await openArchive(bytes);
  const book = await readBook(archive);
  const sheet = chooseSheet(book.sheets, asked);
  const { chunks, hidden } = await readSheet(archive, book, sheet);
  return {
    fileName,
    kind: 'xlsx',
    encoding: null,
    delimiter: null,
    sheets: book.sheets.map((s) => s.name),
    sheet: sheet.name,
    chunks,
    warnings: hidden
      ? [warning('hidden', `Sheet ${sheet.name} hides rows or columns; they are read like the others.`)]
      : [],
  };
}

function chooseSheet(sheets: readonly SheetEntry[], asked: string | undefined): SheetEntry {
  const names = sheets.map((s) => s.name).join(', ');
  const found =
    asked === undefined ? (sheets.find((s) => !s.hidden) ?? sheets[0]) : sheets.find((s) => s.name === asked);
  if (found) return found;
  throw new RequirementError(
    asked === undefined
      ? 'a workbook needs at least one sheet of cells; this one has none'
      : `a sheet must be one of the workbook's (${names}); found ${asked}`,
  );
}

/** One unhurried look at every row: counts them, and keeps the first and the last. */
async function survey(opened: Opened): Promise<Table> {
  const [head, tail]: [Row[], Row[]] = [[], []];
  let [rowCount, columnCount] = [0, 0];
  for await (const rows of unhurried(opened.chunks())) {
    for (const row of rows) {
      const width = widthOf(row.cells);
      if (width === 0) continue;
      if (width > MAX_COLUMNS) throw tooWide(width, row.number);
      if (++rowCount > MAX_ROWS) throw tooLong();
      columnCount = Math.max(columnCount, width);
      if (head.length < HEAD_ROWS) head.push(row);
      tail.push(row);
      if (tail.length > TAIL_ROWS) tail.shift();
    }
  }
  if (rowCount === 0) throw empty(opened);
  return { ...opened, rowCount, columnCount, head, tail };
}

function empty({ sheet, sheets }: Opened): RequirementError {
  const others = sheets.filter((name) => name !== sheet);
  const where = sheet === null ? 'every cell here is empty' : `every cell of sheet ${sheet} is empty`;
  const hint = others.length > 0 ? `; the workbook also has ${others.join(', ')}` : '';
  return new RequirementError(`a table needs at least a header row; ${where}${hint}`);
}

function tooLong(): RequirementError {
  return new RequirementError(
    `a table may have at most ${MAX_ROWS.toLocaleString('en')} rows; this one has more: split the file`,
  );
}

function warning(code: string, message: string): Problem {
  return { severity: 'warning', code, message, row: null, column: null };
}

function megabytes(bytes: number): string {
  return (bytes / (1024 * 1024)).toFixed(bytes < 10 * 1024 * 1024 ? 1 : 0);
}
