import { RequirementError } from '../../domain/requirement.ts';
import { joined, NO_LIGHT, reader } from './chunk.ts';

const STAYS = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ICCP']);
/** Flags of VP8X: film, XMP and Exif are gone. */
const KEPT_FLAGS = 0b0011_0000;

/** A WebP with its picture and colour profile and nothing else. Throws where it is cut off, and on a film. */
export function bareWebp(bytes: Uint8Array): Uint8Array {
  const read = reader(bytes);
  const end = 8 + read.little32(4);
  read.part(0, end);
  const parts: Uint8Array[] = [];
  let light = 0;
  for (let at = 12; at < end; ) {
    const [name, length] = [read.name(at), read.little32(at + 4)];
    if (name === 'ANIM') throw new RequirementError('a picture needs to stand still; this WebP is a film');
    const next = at + 8 + length + (length % 2);
    const part = read.part(at, Math.min(next, end));
    if (name === 'VP8 ' || name === 'VP8L') light += length;
    if (STAYS.has(name)) parts.push(name === 'VP8X' ? withoutFlags(part) : part);
    at = next;
  }
  if (light === 0) throw new RequirementError(NO_LIGHT);
  const body = joined(parts);
  const head = new Uint8Array(12);
  head.set(bytes.subarray(0, 12));
  new DataView(head.buffer).setUint32(4, body.length + 4, true);
  return joined([head, body]);
}

function withoutFlags(part: Uint8Array): Uint8Array {
  const copy = part.slice();
  copy[8]! &= KEPT_FLAGS;
  return copy;
}
