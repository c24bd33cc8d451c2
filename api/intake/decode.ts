import chardet from 'chardet';
import { RequirementError } from '../domain/requirement.ts';

export interface Decoded {
  readonly text: string;
  readonly encoding: string;
  /** A sentence where the encoding had to be guessed. */
  readonly warning: string | null;
}

/**
 * One-byte alphabets worth telling apart, by what the statistics call them. Western ones all count as
 * Windows-1252, which holds the letters of ISO 8859-1 and the plus-minus and micro signs besides.
 */
const ALPHABETS: Readonly<Record<string, string>> = {
  'ISO-8859-7': 'windows-1253',
  'windows-1253': 'windows-1253',
  'windows-1251': 'windows-1251',
  'KOI8-R': 'koi8-r',
};
const CONFIDENT = 40;
const SAMPLE_BYTES = 64 * 1024;

/** Text of a file: byte-order mark, then UTF-16 by its zero bytes, then strict UTF-8, then a one-byte alphabet. */
export function decode(bytes: Uint8Array, asked?: string): Decoded {
  const encoding = asked ?? marked(bytes) ?? wide(bytes);
  if (encoding) return { text: decodeAs(bytes, encoding), encoding, warning: null };
  refuseBinary(bytes);
  try {
    return {
      text: new TextDecoder('utf-8', { fatal: true }).decode(bytes),
      encoding: 'utf-8',
      warning: null,
    };
  } catch {
    return oneByte(bytes);
  }
}

function decodeAs(bytes: Uint8Array, encoding: string): string {
  let decoder: TextDecoder;
  try {
    decoder = new TextDecoder(encoding, { fatal: true });
  } catch {
    throw new RequirementError(
      `an encoding must be one of the Encoding Standard's, such as windows-1252; found ${encoding}`,
    );
  }
  try {
    return withoutControls(decoder.decode(bytes), decoder.encoding);
  } catch {
    throw new RequirementError(
      `a text read as ${encoding} must be ${encoding} throughout; some bytes are not`,
    );
  }
}

/** Windows-1252 from 0x80 to 0x9f, Encoding Standard; a blank where it defines nothing. */
const WINDOWS_1252 = '€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ';

/** Node 20 decodes Windows-1252 as ISO 8859-1, which has control characters where curly quotes and dashes belong. */
function withoutControls(text: string, encoding: string): string {
  if (encoding !== 'windows-1252') return text;
  return text.replace(/[\u0080-\u009f]/g, (c) => WINDOWS_1252[c.charCodeAt(0) - 0x80]!);
}

function marked(bytes: Uint8Array): string | null {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return 'utf-8';
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  return bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : null;
}

/** UTF-16 without a mark: every other byte of plain text is zero, on one side. */
function wide(bytes: Uint8Array): string | null {
  const sample = bytes.subarray(0, 4_096 - (4_096 % 2));
  const zeros = [0, 0];
  sample.forEach((b, i) => {
    if (b === 0) zeros[i % 2]!++;
  });
  const half = sample.length / 2;
  if (zeros[1]! > 0.6 * half && zeros[0]! < 0.05 * half) return 'utf-16le';
  return zeros[0]! > 0.6 * half && zeros[1]! < 0.05 * half ? 'utf-16be' : null;
}

function refuseBinary(bytes: Uint8Array): void {
  const at = bytes.indexOf(0);
  if (at >= 0)
    throw new RequirementError(
      `the import needs a table as CSV, TSV or XLSX; this file is not text (a zero byte at position ${at + 1})`,
    );
}

function oneByte(bytes: Uint8Array): Decoded {
  const [best] = chardet.analyse(bytes.subarray(0, SAMPLE_BYTES));
  const alphabet = best && best.confidence >= CONFIDENT ? ALPHABETS[best.name] : undefined;
  const encoding = alphabet ?? 'windows-1252';
  return {
    text: withoutControls(new TextDecoder(encoding).decode(bytes), encoding),
    encoding,
    warning: `The file is not UTF-8; it was read as ${encoding}. Check accents and the signs ± and µ in the preview.`,
  };
}
