import { RequirementError } from '../../domain/requirement.ts';
import { indexOf } from '../letters.ts';
import { CHUNK_ROWS, MAX_CELL_CHARACTERS, MAX_COLUMNS } from '../limits.ts';
import type { Row } from '../types.ts';
import type { Archive } from './archive.ts';
import type { Book, SheetEntry } from './book.ts';
import { GENERAL, numberText } from './cell-text.ts';
import { type Attributes, readXml } from './xml.ts';

/** Cells of a sheet packed as one string a chunk: a hundredth of the objects that a grid of cells would need. */
export interface PackedRows {
  readonly chunks: () => Generator<readonly Row[]>;
  /** Rows or columns that the workbook hides from view, if any were read. */
  readonly hidden: boolean;
}

const [BETWEEN_ROWS, BETWEEN_CELLS, FORMULA] = ['\u001d', '\u001f', '\u0001'];
// biome-ignore lint/suspicious/noControlCharactersInRegex: they keep packed cells apart
const SEPARATORS = /[\u001d\u001f\u0001]/g;

export async function readSheet(archive: Archive, book: Book, sheet: SheetEntry): Promise<PackedRows> {
  const reader = new SheetReader(book);
  await readXml(archive.text(sheet.path), {
    open: (name, attributes) => reader.open(name, attributes),
    text: (text) => reader.text(text),
    close: (name) => reader.close(name),
  });
  const packed = reader.finish();
  return { chunks: () => unpack(packed), hidden: reader.hidden };
}

function* unpack(packed: readonly string[]): Generator<readonly Row[]> {
  for (const chunk of packed) yield chunk.split(BETWEEN_ROWS!).map(unpackRow);
}

function unpackRow(text: string): Row {
  const [number = '', ...cells] = text.split(BETWEEN_CELLS!);
  if (!text.includes(FORMULA!)) return { number: Number(number), cells };
  const formulas = cells.flatMap((cell, i) => (cell.startsWith(FORMULA!) ? [i] : []));
  return { number: Number(number), cells: cells.map((c) => c.replace(FORMULA!, '')), formulas };
}

/** Takes the events of a sheet's XML and packs its rows. */
class SheetReader {
  hidden = false;
  readonly #book: Book;
  readonly #packed: string[] = [];
  #rows: string[] = [];
  #cells: string[] = [];
  #rowNumber = 0;
  #column = -1;
  #type = 'n';
  #style = 0;
  #value = '';
  #formula = false;
  #collecting = false;
  #phonetic = false;

  constructor(book: Book) {
    this.#book = book;
  }

  open(name: string, attributes: Attributes): void {
    if (name === 'v' || (name === 't' && !this.#phonetic)) this.#collecting = true;
    else if (name === 'c') this.#openCell(attributes);
    else if (name === 'f') this.#formula = true;
    else if (name === 'row') this.#openRow(attributes);
    else if (name === 'rPh') this.#phonetic = true;
    else if (name === 'col' && attributes.hidden === '1') this.hidden = true;
  }

  text(text: string): void {
    if (this.#collecting) this.#value += text;
  }

  close(name: string): void {
    if (name === 'v' || name === 't') this.#collecting = false;
    else if (name === 'c') this.#closeCell();
    else if (name === 'row') this.#closeRow();
    else if (name === 'rPh') this.#phonetic = false;
  }

  finish(): readonly string[] {
    this.#flush();
    return this.#packed;
  }

  #openRow(attributes: Attributes): void {
    const next = Number(attributes.r ?? this.#rowNumber + 1);
    if (!Number.isInteger(next) || next <= this.#rowNumber)
      throw new RequirementError(
        `rows of a workbook must be numbered upwards; ${attributes.r} follows ${this.#rowNumber}`,
      );
    this.#rowNumber = next;
    this.#column = -1;
    this.#cells = [];
    if (attributes.hidden === '1') this.hidden = true;
  }

  #openCell(attributes: Attributes): void {
    this.#column = attributes.r === undefined ? this.#column + 1 : indexOf(attributes.r);
    this.#type = attributes.t ?? 'n';
    this.#style = Number(attributes.s ?? 0);
    this.#value = '';
    this.#formula = false;
  }

  #closeCell(): void {
    const text = this.#cellText().replace(SEPARATORS, ' ');
    if (text.trim() === '' && !this.#formula) return;
    if (this.#column < 0 || this.#column >= MAX_COLUMNS) throw tooWide(this.#column + 1, this.#rowNumber);
    if (text.length > MAX_CELL_CHARACTERS)
      throw new RequirementError(
        `a cell may hold at most ${MAX_CELL_CHARACTERS} characters; row ${this.#rowNumber} has a longer one`,
      );
    while (this.#cells.length < this.#column) this.#cells.push('');
    this.#cells[this.#column] = this.#formula ? FORMULA + text : text;
  }

  #cellText(): string {
    if (this.#type === 's') return this.#book.strings[Number(this.#value)] ?? '';
    if (this.#type === 'b') return this.#value === '1' ? 'TRUE' : 'FALSE';
    if (this.#type === 'd') return this.#value.slice(0, 10);
    if (this.#type !== 'n') return this.#value;
    return numberText(this.#value, this.#book.formats[this.#style] ?? GENERAL, this.#book.epoch1904);
  }

  #closeRow(): void {
    if (this.#cells.length === 0) return;
    this.#rows.push([this.#rowNumber, ...this.#cells].join(BETWEEN_CELLS));
    if (this.#rows.length >= CHUNK_ROWS) this.#flush();
  }

  #flush(): void {
    if (this.#rows.length > 0) this.#packed.push(this.#rows.join(BETWEEN_ROWS));
    this.#rows = [];
  }
}

export function tooWide(columns: number, row: number): RequirementError {
  return new RequirementError(
    `a table may have at most ${MAX_COLUMNS.toLocaleString('en')} columns; ` +
      `row ${row} reaches column ${columns.toLocaleString('en')}`,
  );
}
