import { RequirementError } from '../domain/requirement.ts';

const WANTED = 'the import needs a table as CSV, TSV or XLSX';

/** First bytes of files that are no table, and what to call them. */
const FOREIGN: readonly (readonly [name: string, ...bytes: readonly (number | null)[]])[] = [
  ['a PNG picture', 0x89, 0x50, 0x4e, 0x47],
  ['a JPEG picture', 0xff, 0xd8, 0xff],
  ['a GIF picture', 0x47, 0x49, 0x46, 0x38],
  ['a TIFF picture', 0x49, 0x49, 0x2a, 0x00],
  ['a TIFF picture', 0x4d, 0x4d, 0x00, 0x2a],
  ['a WebP picture', 0x52, 0x49, 0x46, 0x46, null, null, null, null, 0x57, 0x45, 0x42, 0x50],
  ['a RIFF sound or film', 0x52, 0x49, 0x46, 0x46],
  ['a HEIC picture or an MP4 film', null, null, null, null, 0x66, 0x74, 0x79, 0x70],
  ['a PDF document', 0x25, 0x50, 0x44, 0x46, 0x2d],
  ['an RTF document', 0x7b, 0x5c, 0x72, 0x74, 0x66],
  ['a gzip archive', 0x1f, 0x8b],
  ['a bzip2 archive', 0x42, 0x5a, 0x68],
  ['an XZ archive', 0xfd, 0x37, 0x7a, 0x58, 0x5a],
  ['a 7-Zip archive', 0x37, 0x7a, 0xbc, 0xaf, 0x27, 0x1c],
  ['a RAR archive', 0x52, 0x61, 0x72, 0x21, 0x1a, 0x07],
  ['a program', 0x7f, 0x45, 0x4c, 0x46],
  ['an SQLite database', 0x53, 0x51, 0x4c, 0x69, 0x74, 0x65, 0x20, 0x66],
  ['a UTF-32 text; save it as UTF-8', 0xff, 0xfe, 0x00, 0x00],
  ['a UTF-32 text; save it as UTF-8', 0x00, 0x00, 0xfe, 0xff],
];

/** Compound files hold old workbooks and encrypted new ones; their directory names its streams in UTF-16. */
const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

/** Tells a workbook from text by content, whatever the name says; throws, naming what it is, on all else. */
export function sniff(bytes: Uint8Array): 'zip' | 'text' {
  if (begins(bytes, COMPOUND)) throw compoundRefusal(bytes);
  if (begins(bytes, [0x50, 0x4b, 0x03, 0x04]) || begins(bytes, [0x50, 0x4b, 0x05, 0x06])) return 'zip';
  const foreign = foreignName(bytes);
  if (foreign) throw new RequirementError(`${WANTED}; this file is ${foreign}`);
  refuseMarkup(bytes);
  return 'text';
}

/** What to call a file that is known by its first bytes and is no table; null where they say nothing. */
export function foreignName(bytes: Uint8Array): string | null {
  const foreign = FOREIGN.find(([, ...start]) => begins(bytes, start));
  if (foreign) return foreign[0];
  const bitmap = begins(bytes, [0x42, 0x4d]) && bytes.length > 14 && bytes[6] === 0 && bytes[7] === 0;
  return bitmap ? 'a BMP picture' : null;
}

/** Refuses text that is not a table but a document written in markup. */
function refuseMarkup(bytes: Uint8Array): void {
  const start = latin1(bytes.subarray(0, 2_000))
    .replaceAll('\0', '')
    .replace(/^(ï»¿|ÿþ|þÿ)/, '')
    .trimStart();
  if (/^<(!doctype html|html|head|body|table|meta)\b/i.test(start))
    throw new RequirementError(
      `${WANTED}; this file is a web page, whatever its name: open it in a spreadsheet and save it as XLSX or CSV`,
    );
  if (/^<\?xml|^<svg\b/i.test(start))
    throw new RequirementError(
      `${WANTED}; this file is an XML document: open it in a spreadsheet and save it as XLSX or CSV`,
    );
}

function compoundRefusal(bytes: Uint8Array): RequirementError {
  if (holdsUtf16(bytes, 'EncryptedPackage'))
    return new RequirementError(
      'a workbook must be readable without a password; this one is protected: save a copy without one',
    );
  if (holdsUtf16(bytes, 'Workbook') || holdsUtf16(bytes, 'Book'))
    return new RequirementError(
      `${WANTED}; this is a workbook of the old kind (.xls, before 2007): open it and save it as XLSX or CSV`,
    );
  return new RequirementError(`${WANTED}; this file is an old office document`);
}

function holdsUtf16(bytes: Uint8Array, word: string): boolean {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).includes(Buffer.from(word, 'utf16le'));
}

function latin1(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
}

function begins(bytes: Uint8Array, start: readonly (number | null)[]): boolean {
  return bytes.length >= start.length && start.every((b, i) => b === null || bytes[i] === b);
}
