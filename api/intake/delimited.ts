import { setImmediate as breathe } from 'node:timers/promises';
import Papa from 'papaparse';
import { RequirementError } from '../domain/requirement.ts';
import { readHeader } from './header.ts';
import { CHUNK_ROWS, MAX_ROW_CHARACTERS } from './limits.ts';
import type { Row } from './types.ts';

export const DELIMITERS = ['\t', ';', ',', '|'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

const WINDOW = 128 * 1024;
const SAMPLE = 64 * 1024;
const SAMPLE_ROWS = 60;
const NUMBER_LIKE = /^[<>≤±+−-]? ?\d[\d.,'\u00a0\u202f ]*(?: ?± ?\d[\d.,]*)?%?$/;

/**
 * The delimiter under which most of the first rows' text reads as numbers and names of analytes. Counting cells
 * alone fails where commas are decimal marks: `R-17;36,7;0,4` splits evenly on both signs.
 */
export function chooseDelimiter(text: string): Delimiter {
  const asked = /^sep=(.)\r?\n/i.exec(text)?.[1];
  if (asked && (DELIMITERS as readonly string[]).includes(asked)) return asked as Delimiter;
  const sample = text.slice(0, SAMPLE);
  const scores = DELIMITERS.map((delimiter) => scoreOf(sample, delimiter));
  return DELIMITERS[scores.indexOf(Math.max(...scores))]!;
}

function scoreOf(sample: string, delimiter: Delimiter): number {
  const { data } = parse(sample, delimiter, newlineOf(sample), false);
  const rows = data.slice(0, SAMPLE_ROWS).filter((cells) => cells.length > 1);
  const meaningful = rows.flat().filter((cell) => NUMBER_LIKE.test(cell.trim()) || isAnalyte(cell));
  return meaningful.reduce((sum, cell) => sum + cell.length, 0) + (rows.length > 0 ? 0.5 : 0);
}

function isAnalyte(cell: string): boolean {
  return cell.length < 40 && !/[\t;|]/.test(cell) && readHeader(cell).analyte !== null;
}

/** Columns set apart by runs of blanks, as a terminal or a PDF gives them, become tab-separated. */
export function tabsForBlanks(text: string): string {
  const lines = text.split(/\r?\n|\r/);
  const spaced = lines.filter((line) => / {2,}/.test(line.trim())).length;
  const filled = lines.filter((line) => line.trim() !== '');
  const commas = filled.every((line) => line.replace(/\d,\d/g, '').includes(','));
  const delimited = /[\t;|]/.test(text) || commas;
  if (delimited || spaced < 2 || spaced < lines.length / 2) return text;
  return lines.map((line) => line.trim().replace(/ {2,}/g, '\t')).join('\n');
}

/** Rows of delimited text in chunks; quotes may enclose delimiters and line ends. Each call starts anew. */
export function* delimitedChunks(text: string, delimiter: string): Generator<readonly Row[]> {
  const newline = newlineOf(text);
  let [at, size, number] = [0, WINDOW, 0];
  while (at < text.length) {
    const last = at + size >= text.length;
    const { data, errors, cursor } = parse(text.slice(at, at + size), delimiter, newline, !last);
    refuseOpenQuote(errors, number);
    if (cursor === 0 && !last) {
      size = growRow(size, number);
      continue;
    }
    for (let i = 0; i < data.length; i += CHUNK_ROWS)
      yield data.slice(i, i + CHUNK_ROWS).map((cells, j) => ({ number: number + i + j + 1, cells }));
    number += data.length;
    at = last ? text.length : at + cursor;
    size = WINDOW;
  }
}

/** A row longer than the window: look further, but not for ever. */
function growRow(size: number, number: number): number {
  if (size > MAX_ROW_CHARACTERS)
    throw new RequirementError(
      `a row may hold at most ${MAX_ROW_CHARACTERS.toLocaleString('en')} characters; row ${number + 1} is longer: ` +
        'is a quotation mark (") left open there?',
    );
  return size * 2;
}

interface Parsed {
  readonly data: string[][];
  readonly errors: readonly { readonly code: string; readonly row?: number }[];
  readonly cursor: number;
}

function parse(text: string, delimiter: string, newline: '\n' | '\r', ignoreLastRow: boolean): Parsed {
  const parser = new Papa.Parser({ delimiter, newline });
  const { data, errors, meta } = parser.parse(text, 0, ignoreLastRow);
  if (!ignoreLastRow && text.endsWith(newline) && data.length > 0) data.pop();
  for (const cells of data) {
    const end = cells.length - 1;
    if (newline === '\n' && cells[end].endsWith('\r')) cells[end] = cells[end].slice(0, -1);
  }
  return { data, errors, cursor: meta.cursor };
}

function newlineOf(text: string): '\n' | '\r' {
  return !text.includes('\n') && text.includes('\r') ? '\r' : '\n';
}

function refuseOpenQuote(errors: Parsed['errors'], number: number): void {
  const open = errors.find((e) => e.code === 'MissingQuotes');
  if (open)
    throw new RequirementError(
      `a quotation mark (") that opens a cell must be closed; the one in row ${number + (open.row ?? 0) + 1} is not`,
    );
}

/** Lets other requests through between chunks. */
export async function* unhurried<T>(chunks: Iterable<T>): AsyncGenerator<T> {
  for (const chunk of chunks) {
    yield chunk;
    await breathe();
  }
}
