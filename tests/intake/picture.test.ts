import { imageSize } from 'image-size';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { readPicture } from '../../api/intake/picture/read-picture.ts';
import {
  invented,
  PLACE,
  phoneJpeg,
  pngChunk,
  pngOfSize,
  taggedPng,
  taggedWebp,
} from '../support/pictures.ts';

const text = (bytes: Uint8Array) => new TextDecoder('latin1').decode(bytes);
const ascii = (words: string) => Uint8Array.from(words, (letter) => letter.charCodeAt(0));

describe('readPicture', () => {
  it.each([
    ['a.jpg', 'image/jpeg', invented('invented.jpg')],
    ['a.JPEG', 'image/jpeg', invented('progressive.jpg')],
    ['a.png', 'image/png', invented('invented.png')],
    ['a.webp', 'image/webp', invented('invented.webp')],
    ['blob', 'image/webp', invented('invented.webp')],
  ])('reads type and size of %s from its bytes and leaves the picture as it is', (name, type, bytes) => {
    const read = readPicture(bytes, name);
    expect(read).toMatchObject({ type, width: 60, height: 40 });
    expect(imageSize(read.bytes)).toMatchObject({ width: 60, height: 40 });
  });

  it.each([
    ['JPEG', 'a.jpg', phoneJpeg(), invented('invented.jpg')],
    ['progressive JPEG', 'a.jpg', phoneJpeg(1, invented('progressive.jpg')), invented('progressive.jpg')],
  ])(
    'leaves place, camera and what hides behind the end of a %s behind, and nothing else',
    (_, name, tagged, bare) => {
      expect(text(tagged)).toContain(PLACE);
      expect([...readPicture(tagged, name).bytes]).toEqual([...bare]);
    },
  );
  it('leaves texts, Exif and what hides behind the end of a PNG behind; its pixels stay', () => {
    const { bytes } = readPicture(taggedPng(), 'a.png');
    expect(text(bytes)).not.toMatch(/GPS|eXIf|tEXt/);
    const pixels = (png: Uint8Array) => PNG.sync.read(Buffer.from(png)).data;
    expect(pixels(bytes).equals(pixels(invented('invented.png')))).toBe(true);
  });
  it('leaves Exif and XMP of a WebP behind; its coded light stays', () => {
    const { bytes } = readPicture(taggedWebp(), 'a.webp');
    expect(text(bytes)).not.toMatch(/GPS|EXIF|XMP/);
    expect(imageSize(bytes)).toMatchObject({ width: 60, height: 40 });
    expect(text(bytes)).toContain(text(invented('invented.webp').subarray(12)));
    expect(new DataView(bytes.buffer).getUint32(4, true)).toBe(bytes.length - 8);
  });

  it('keeps which way is up, and gives the size as it is shown', () => {
    const turned = readPicture(phoneJpeg(6), 'a.jpg');
    expect(turned).toMatchObject({ width: 40, height: 60 });
    expect(imageSize(turned.bytes)).toMatchObject({ width: 60, height: 40, orientation: 6 });
    expect(text(turned.bytes)).not.toContain('GPS');
    expect(readPicture(phoneJpeg(3), 'a.jpg')).toMatchObject({ width: 60, height: 40 });
  });

  it('comes to the same when read again', () => {
    for (const [bytes, name] of [
      [phoneJpeg(6), 'a.jpg'],
      [taggedPng(), 'a.png'],
      [taggedWebp(), 'a.webp'],
    ] as const) {
      const once = readPicture(bytes, name).bytes;
      expect([...readPicture(once, name).bytes]).toEqual([...once]);
    }
  });

  it('refuses every file that is cut off, at whatever byte', () => {
    for (const bytes of [
      invented('invented.jpg'),
      invented('progressive.jpg'),
      invented('invented.png'),
      invented('invented.webp'),
    ])
      for (let end = 0; end < bytes.length; end++)
        expect(() => readPicture(bytes.subarray(0, end), ''), `${end} of ${bytes.length}`).toThrow(
          /a picture needs/,
        );
  });

  const png = invented('invented.png');
  const damaged = png.slice();
  damaged[60]! ^= 1;
  it.each<[string, string, Uint8Array, string]>([
    ['a lying name', 'a.png', invented('invented.jpg'), 'needs to say what it is; “a.png” is a JPEG'],
    ['a lying name', 'a.jpg', png, '“a.jpg” is a PNG'],
    [
      'a drawing with script',
      'a.svg',
      ascii('<svg xmlns="x"><script>1</script></svg>'),
      'this file is none of them',
    ],
    ['a renamed drawing', 'a.png', ascii('<svg xmlns="x"/>'), 'this file is none of them'],
    ['a film', 'a.gif', ascii('GIF89a'), 'this file is a GIF picture'],
    ['a phone’s own format', 'a.heic', Uint8Array.from([0, 0, 0, 24, ...ascii('ftypheic')]), 'HEIC picture'],
    ['an empty file', 'a.jpg', new Uint8Array(), 'this file is empty'],
    ['a cut-off file', 'a.jpg', invented('invented.jpg').subarray(0, 300), 'breaks off after 300 bytes'],
    ['a damaged file', 'a.png', damaged, 'the check sum of its part'],
    [
      'more than 40 megapixels',
      'a.png',
      pngOfSize(8000, 6000),
      'at most 40 megapixels; this one has 48.0 (8000 by 6000)',
    ],
    [
      'no pixels',
      'a.png',
      Uint8Array.from([...png.subarray(0, 33), ...pngChunk('IEND', new Uint8Array())]),
      'a heading and none',
    ],
  ])('refuses %s: %s', (_, name, bytes, words) => {
    expect(() => readPicture(bytes, name)).toThrow(words);
  });
});
