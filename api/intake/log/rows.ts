import Papa from 'papaparse';
import { RequirementError } from '../../domain/requirement.ts';
import { decode } from '../decode.ts';
import { MAX_ROW_CHARACTERS } from '../limits.ts';

/** Bytes at the start that the encoding and the columns are understood from. */
export const HEAD_BYTES = 128 * 1024;

/** Characters parsed at a time, at least. */
const WINDOW = 64 * 1024;

/** Rows of a log with the number of the first; numbers count as a spreadsheet does. */
export interface RowBatch {
  readonly first: number;
  readonly rows: readonly (readonly string[])[];
}

/** The first bytes of a stream, and the whole stream again. */
export async function headOf(
  bytes: AsyncIterable<Uint8Array>,
): Promise<{ head: Uint8Array; whole: AsyncIterable<Uint8Array>; complete: boolean }> {
  const iterator = bytes[Symbol.asyncIterator]();
  const read: Uint8Array[] = [];
  let [length, done] = [0, false];
  while (length < HEAD_BYTES && !done) {
    const next = await iterator.next();
    if (next.done) done = true;
    else {
      read.push(next.value);
      length += next.value.length;
    }
  }
  async function* whole() {
    yield* read;
    for (let next = done ? null : await iterator.next(); next && !next.done; next = await iterator.next())
      yield next.value;
  }
  return { head: joined(read, length), whole: whole(), complete: done };
}

function joined(parts: readonly Uint8Array[], length: number): Uint8Array {
  const out = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

/** Text of the head and its encoding; a letter cut in two at the end is left off. */
export function decodeHead(head: Uint8Array, complete: boolean): { text: string; encoding: string } {
  if (complete) return decode(head);
  // UTF-16 has zero bytes and letters of two; other encodings are cut at a line end.
  if (head.includes(0)) return decode(head.subarray(0, head.length - (head.length % 2)));
  const line = Math.max(head.lastIndexOf(0x0a), head.lastIndexOf(0x0d));
  return decode(head.subarray(0, line < 0 ? head.length : line + 1));
}

interface Parsed {
  readonly data: string[][];
  readonly errors: readonly { readonly code: string; readonly row?: number }[];
  readonly meta: { readonly cursor: number };
}

/** Rows of delimited text as they stream in. Throws when a row grows beyond bounds, as after an open quotation mark. */
export async function* streamRows(
  bytes: AsyncIterable<Uint8Array>,
  { encoding, delimiter, newline }: { encoding: string; delimiter: string; newline: '\n' | '\r' },
): AsyncGenerator<RowBatch> {
  const decoder = new TextDecoder(encoding);
  const parser = new Papa.Parser({ delimiter, newline });
  let [rest, first] = ['', 1];
  const take = (last: boolean): RowBatch => {
    const { data, errors, meta } = parser.parse(rest, 0, !last) as Parsed;
    const open = errors.find((e) => e.code === 'MissingQuotes');
    if (last && open)
      throw new RequirementError(
        `a quotation mark (") that opens a cell must be closed; the one in row ${first + (open.row ?? 0)} is not`,
      );
    if (last && data.length > 0 && data.at(-1)!.join('') === '') data.pop();
    rest = last ? '' : rest.slice(meta.cursor);
    if (rest.length > MAX_ROW_CHARACTERS)
      throw new RequirementError(
        `a row may hold at most ${MAX_ROW_CHARACTERS.toLocaleString('en')} characters; row ${first + data.length} is longer: is a quotation mark (") left open there?`,
      );
    const batch = { first, rows: data };
    first += data.length;
    return batch;
  };
  for await (const chunk of bytes) {
    rest += decoder.decode(chunk, { stream: true });
    if (rest.length >= WINDOW) yield take(false);
  }
  rest += decoder.decode();
  yield take(true);
}
