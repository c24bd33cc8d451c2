import type { Readable } from 'node:stream';
import yauzl from 'yauzl';
import { type BundledPlacement, bundledPlacement } from '../../contract/bundle.ts';
import { MAX_BUNDLE_FILES, MAX_BUNDLE_UNPACKED } from '../../contract/bundle-limits.ts';
import type { ComparisonData } from '../../contract/comparison-data.ts';
import { RequirementError } from '../../domain/requirement.ts';
import { descriptor, hashOf } from './descriptor.ts';
import { readTables, TABLE_NAMES, type TableName } from './tables.ts';

export interface UnpackedBundle {
  readonly placement: BundledPlacement;
  readonly data: ComparisonData;
}
const DESCRIPTOR = 'datapackage.json';

/**
 * Opens a bundle in memory; nothing is written anywhere. Throws a requirement when it is no zip, too large, climbs out
 * by a path, holds other files than its descriptor lists, or a file is not the one that was listed.
 */
export async function unpackBundle(bytes: Uint8Array): Promise<UnpackedBundle> {
  const files = await filesOf(bytes);
  const listed = descriptorOf(files).resources;
  const others = [...files.keys()].filter(
    (path) => path !== DESCRIPTOR && !listed.some((one) => one.path === path),
  );
  if (others.length > 0)
    throw new RequirementError(`a bundle holds what its descriptor lists; ${others[0]} is not listed`);
  for (const { path, bytes: size, hash } of listed) {
    const file = files.get(path);
    if (file === undefined)
      throw new RequirementError(`a bundle holds what its descriptor lists; ${path} is missing`);
    if (file.length !== size || hashOf(file) !== hash)
      throw new RequirementError(`a file must be as it was when it was listed; ${path} has been changed`);
  }
  const text = (path: string) => new TextDecoder().decode(needed(files, path));
  const tables = Object.fromEntries(TABLE_NAMES.map((name) => [name, text(`data/${name}.csv`)]));
  return {
    placement: placementOf(text('placement.json')),
    data: readTables(tables as Record<TableName, string>),
  };
}

async function filesOf(bytes: Uint8Array): Promise<Map<string, Uint8Array>> {
  try {
    return await read(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  } catch (error) {
    if (error instanceof RequirementError) throw error;
    const reason = error instanceof Error ? error.message : String(error);
    throw new RequirementError(
      `a bundle must be an intact zip with plain paths; this one is not (${reason})`,
    );
  }
}

/** yauzl itself refuses absolute paths, backslashes and paths that climb, and entries longer than their listing. */
async function read(buffer: Buffer): Promise<Map<string, Uint8Array>> {
  const zip = await yauzl.fromBufferPromise(buffer);
  if (zip.entryCount > MAX_BUNDLE_FILES)
    throw new RequirementError(
      `a bundle has at most ${MAX_BUNDLE_FILES} files; this one has ${zip.entryCount}`,
    );
  const files = new Map<string, Uint8Array>();
  let unpacked = 0;
  for await (const entry of zip.eachEntry()) {
    unpacked += entry.uncompressedSize;
    if (unpacked > MAX_BUNDLE_UNPACKED)
      throw new RequirementError(
        `a bundle unpacks to at most ${MAX_BUNDLE_UNPACKED / 1024 / 1024} MB; this one unpacks to more`,
      );
    if (files.has(entry.fileName))
      throw new RequirementError(`a bundle holds each file once; ${entry.fileName} is there twice`);
    const stream: Readable = await zip.openReadStreamPromise(entry);
    const pieces: Buffer[] = [];
    for await (const piece of stream) pieces.push(piece as Buffer);
    files.set(entry.fileName, Buffer.concat(pieces));
  }
  return files;
}

function needed(files: ReadonlyMap<string, Uint8Array>, path: string): Uint8Array {
  const file = files.get(path);
  if (file === undefined) throw new RequirementError(`a bundle needs ${path}; this one has none`);
  return file;
}

function descriptorOf(files: ReadonlyMap<string, Uint8Array>) {
  const parsed = descriptor.safeParse(
    jsonOf(DESCRIPTOR, new TextDecoder().decode(needed(files, DESCRIPTOR))),
  );
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  throw new RequirementError(
    `${DESCRIPTOR} must list every file with its size and SHA-256; ${issue!.path.join('.')}: ${issue!.message}`,
  );
}

function placementOf(text: string): BundledPlacement {
  const value = jsonOf('placement.json', text);
  const read = bundledPlacement.safeParse(value);
  // The answer itself is kept as it stands: what this version does not know must not be lost from it.
  if (read.success) return { ...read.data, result: (value as BundledPlacement).result };
  const [issue] = read.error.issues;
  throw new RequirementError(
    `placement.json must hold a placement; ${issue!.path.join('.')}: ${issue!.message}`,
  );
}

function jsonOf(name: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new RequirementError(`${name} must be JSON; it is not`);
  }
}
