import { crc32 } from 'node:zlib';
import { RequirementError } from '../../domain/requirement.ts';
import { joined, NO_LIGHT, reader } from './chunk.ts';

/** Chunks that make the picture and its colours; texts, places, dates and films are left behind. */
const STAYS = new Set([
  'IHDR',
  'PLTE',
  'IDAT',
  'IEND',
  'tRNS',
  'gAMA',
  'cHRM',
  'sRGB',
  'iCCP',
  'sBIT',
  'pHYs',
]);

/** A PNG with its picture and colour profile and nothing else. Throws where it is cut off or a chunk was damaged. */
export function barePng(bytes: Uint8Array): Uint8Array {
  const read = reader(bytes);
  const parts = [read.part(0, 8)];
  let light = 0;
  for (let at = 8; ; ) {
    const [length, name] = [read.big32(at), read.name(at + 4)];
    const end = at + 12 + length;
    const part = read.part(at, end);
    if (crc32(part.subarray(4, 8 + length)) !== read.big32(end - 4))
      throw new RequirementError(
        `a picture needs to be undamaged; the check sum of its part ${JSON.stringify(name)} does not fit`,
      );
    if (STAYS.has(name)) parts.push(part);
    if (name === 'IDAT') light += length;
    if (name === 'IEND' && light === 0) throw new RequirementError(NO_LIGHT);
    if (name === 'IEND') return joined(parts);
    at = end;
  }
}
