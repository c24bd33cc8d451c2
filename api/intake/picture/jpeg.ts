import { RequirementError } from '../../domain/requirement.ts';
import { cutOff, joined, NO_LIGHT, reader } from './chunk.ts';

const [START, END, SCAN, APP0, APP15, ICC, ADOBE, COMMENT] = [0xd8, 0xd9, 0xda, 0xe0, 0xef, 0xe2, 0xee, 0xfe];

/**
 * A JPEG with its picture, its colour profile and which way is up, and nothing else: place, camera, owner, thumbnail
 * and whatever hides behind the end are left behind. Throws where the file ends before the picture does.
 */
export function bareJpeg(bytes: Uint8Array, orientation: number): Uint8Array {
  const read = reader(bytes);
  const turned = orientation > 1 && orientation <= 8;
  const parts = [read.part(0, 2), ...(turned ? [upright(orientation)] : [])];
  let scans = 0;
  for (let at = 2; ; ) {
    // Bytes 0xff may fill the room before a marker.
    while (read.byte(at) === 0xff && read.byte(at + 1) === 0xff) at++;
    if (read.byte(at) !== 0xff)
      throw new RequirementError(`a picture needs to be undamaged; this JPEG is not at byte ${at}`);
    const marker = read.byte(at + 1);
    if (marker === END && scans === 0) throw new RequirementError(NO_LIGHT);
    if (marker === END) return joined([...parts, read.part(at, at + 2)]);
    const end = at + 2 + (alone(marker) ? 0 : read.big16(at + 2));
    if (marker === SCAN) scans++;
    const next = marker === SCAN ? afterScan(bytes, end) : end;
    const part = read.part(at, next);
    if (stays(marker, part)) parts.push(part);
    at = next;
  }
}

const alone = (marker: number) => marker === START || (marker >= 0xd0 && marker <= 0xd7) || marker === 0x01;

function stays(marker: number, part: Uint8Array): boolean {
  if (marker === COMMENT) return false;
  if (marker < APP0 || marker > APP15) return true;
  return marker === APP0 || marker === ADOBE || (marker === ICC && says(part, 'ICC_PROFILE'));
}
const says = (part: Uint8Array, name: string) =>
  String.fromCharCode(...part.subarray(4, 4 + name.length)) === name;

/** Where the coded light ends: at the first marker that is neither a stuffed byte nor a restart. */
function afterScan(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1];
    if (next === undefined) break;
    if (next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  throw cutOff(bytes);
}

/** An Exif block that holds one thing, which way is up (Exif 2.32, tag 0x0112). */
function upright(orientation: number): Uint8Array {
  const tiff = [
    0x4d,
    0x4d,
    0,
    42,
    0,
    0,
    0,
    8,
    0,
    1,
    0x01,
    0x12,
    0,
    3,
    0,
    0,
    0,
    1,
    0,
    orientation,
    0,
    0,
    0,
    0,
    0,
    0,
  ];
  const body = [...[...'Exif'].map((letter) => letter.charCodeAt(0)), 0, 0, ...tiff];
  return Uint8Array.from([0xff, 0xe1, 0, body.length + 2, ...body]);
}
