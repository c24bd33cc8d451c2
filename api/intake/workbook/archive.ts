import type { Readable } from 'node:stream';
import yauzl from 'yauzl';
import { RequirementError } from '../../domain/requirement.ts';
import { MAX_RATIO, MAX_UNPACKED_BYTES, MAX_ZIP_ENTRIES, RATIO_FROM_BYTES } from '../limits.ts';

/** A ZIP archive whose listing has been judged; entries are unpacked one at a time, counted as they come. */
export interface Archive {
  readonly names: readonly string[];
  /** Text of an entry in pieces; throws when the entry is missing. */
  readonly text: (name: string) => AsyncGenerator<string>;
}

const MEGABYTE = 1024 * 1024;

/** Opens a ZIP archive from memory; throws when its listing promises too much or it cannot be read. */
export async function openArchive(bytes: Uint8Array): Promise<Archive> {
  const zip = await orUnreadable(
    yauzl.fromBufferPromise(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)),
  );
  const entries = await orUnreadable(entriesOf(zip));
  judgeSizes([...entries.values()]);
  let unpacked = 0;
  const count = (size: number) => {
    unpacked += size;
    if (unpacked > MAX_UNPACKED_BYTES) throw tooLarge('more');
  };
  return { names: [...entries.keys()], text: (name) => textOf(zip, entries.get(name), count) };
}

async function entriesOf(zip: yauzl.ZipFile): Promise<Map<string, yauzl.Entry>> {
  const entries = new Map<string, yauzl.Entry>();
  if (zip.entryCount > MAX_ZIP_ENTRIES)
    throw new RequirementError(
      `a workbook may hold at most ${MAX_ZIP_ENTRIES} parts; this archive has ${zip.entryCount}`,
    );
  for await (const entry of zip.eachEntry()) {
    if (entry.isEncrypted())
      throw new RequirementError('a workbook must be readable without a password; this one is protected');
    entries.set(entry.fileName, entry);
  }
  return entries;
}

function judgeSizes(entries: readonly yauzl.Entry[]): void {
  const total = entries.reduce((sum, e) => sum + e.uncompressedSize, 0);
  if (total > MAX_UNPACKED_BYTES) throw tooLarge(`${Math.round(total / MEGABYTE).toLocaleString('en')} MB`);
  const dense = entries.find(
    (e) => e.uncompressedSize > RATIO_FROM_BYTES && e.uncompressedSize > MAX_RATIO * e.compressedSize,
  );
  if (dense)
    throw new RequirementError(
      `a part of a workbook may grow at most ${MAX_RATIO} times when unpacked; ` +
        `${dense.fileName} grows ${Math.round(dense.uncompressedSize / dense.compressedSize)} times`,
    );
}

function tooLarge(found: string): RequirementError {
  return new RequirementError(
    `a workbook may unpack to at most ${MAX_UNPACKED_BYTES / MEGABYTE} MB; this one unpacks to ${found}`,
  );
}

/** yauzl ends the stream with an error as soon as an entry holds more bytes than its listing promised. */
async function* textOf(
  zip: yauzl.ZipFile,
  entry: yauzl.Entry | undefined,
  count: (size: number) => void,
): AsyncGenerator<string> {
  if (!entry) throw new RequirementError('a workbook must be complete; a part of this one is missing');
  const stream: Readable = await orUnreadable(zip.openReadStreamPromise(entry));
  const decoder = new TextDecoder('utf-8');
  try {
    for await (const piece of stream) {
      count((piece as Buffer).length);
      yield decoder.decode(piece as Buffer, { stream: true });
    }
  } catch (error) {
    throw readable(error);
  }
  yield decoder.decode();
}

async function orUnreadable<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (error) {
    throw readable(error);
  }
}

function readable(error: unknown): RequirementError {
  if (error instanceof RequirementError) return error;
  const reason = error instanceof Error ? error.message : String(error);
  return new RequirementError(`a workbook must be an intact ZIP archive; this one is not (${reason})`);
}
