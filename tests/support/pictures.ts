import { readFileSync } from 'node:fs';
import { crc32 } from 'node:zlib';

export const invented = (name: 'invented.jpg' | 'progressive.jpg' | 'invented.png' | 'invented.webp') =>
  new Uint8Array(readFileSync(new URL(`../fixtures/pictures/${name}`, import.meta.url)));

const ascii = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
const joined = (...parts: readonly Uint8Array[]) => Uint8Array.from(parts.flatMap((part) => [...part]));
const big32 = (n: number) => Uint8Array.from([n >>> 24, n >>> 16, n >>> 8, n].map((byte) => byte & 255));
const little32 = (n: number) => big32(n).reverse();
/** Words that must not be handed on. */
export const PLACE = 'GPSLatitude 47.1234 N';

/** Exif (big-endian TIFF) with which way is up and a text. */
function exif(orientation: number): Uint8Array {
  const text = ascii(`${PLACE}\0`);
  const up = [0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0];
  const says = [0x01, 0x0e, 0, 2, ...big32(text.length), ...big32(38)];
  return joined(ascii('MM'), Uint8Array.from([0, 42, 0, 0, 0, 8, 0, 2, ...up, ...says, 0, 0, 0, 0]), text);
}

function segment(marker: number, body: Uint8Array): Uint8Array {
  const length = body.length + 2;
  return joined(Uint8Array.from([0xff, marker, length >> 8, length & 255]), body);
}

/** A JPEG as a phone writes it: place and camera in Exif, XMP, a comment, and a film behind the end. */
export function phoneJpeg(orientation = 1, jpeg = invented('invented.jpg')): Uint8Array {
  return joined(
    jpeg.subarray(0, 2),
    segment(0xe1, joined(ascii('Exif\0\0'), exif(orientation))),
    segment(0xe1, ascii(`http://ns.adobe.com/xap/1.0/\0<x>${PLACE}</x>`)),
    segment(0xed, ascii(PLACE)),
    segment(0xfe, ascii(PLACE)),
    jpeg.subarray(2),
    ascii(`ftypmp42 ${PLACE}`),
  );
}

export function pngChunk(name: string, body: Uint8Array): Uint8Array {
  const named = joined(ascii(name), body);
  return joined(big32(body.length), named, big32(crc32(named)));
}
export function taggedPng(): Uint8Array {
  const png = invented('invented.png');
  const at = 8 + 25;
  const tags = [pngChunk('tEXt', ascii(`Comment\0${PLACE}`)), pngChunk('eXIf', exif(6))];
  return joined(png.subarray(0, at), ...tags, png.subarray(at), ascii(PLACE));
}

export function taggedWebp(): Uint8Array {
  const light = invented('invented.webp').subarray(12);
  // VP8X: flags Exif and XMP, canvas 60 by 40 less one each.
  const head = joined(ascii('VP8X'), little32(10), Uint8Array.from([0x0c, 0, 0, 0, 59, 0, 0, 39, 0, 0]));
  const tag = (name: string, body: Uint8Array) =>
    joined(ascii(name), little32(body.length), body, new Uint8Array(body.length % 2));
  const body = joined(ascii('WEBP'), head, light, tag('EXIF', exif(6)), tag('XMP ', ascii(PLACE)));
  return joined(ascii('RIFF'), little32(body.length), body);
}

/** A PNG that says it is that large; its pixels are those of a small one. */
export function pngOfSize(width: number, height: number): Uint8Array {
  const png = invented('invented.png');
  const head = joined(big32(width), big32(height), png.subarray(24, 29));
  return joined(png.subarray(0, 8), pngChunk('IHDR', head), png.subarray(33));
}
