import { describe, expect, it } from 'vitest';
import { readTable } from '../../api/intake/read-table.ts';
import { sniff } from '../../api/intake/sniff.ts';

const bytes = (...start: number[]) => Uint8Array.from([...start, ...new Array(40).fill(1)]);
const text = (t: string) => new TextEncoder().encode(t);

describe('what a file is, by its first bytes', () => {
  it.each([
    ['a PNG picture', bytes(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)],
    ['a JPEG picture', bytes(0xff, 0xd8, 0xff, 0xe0)],
    ['a GIF picture', text('GIF89a…')],
    ['a TIFF picture', bytes(0x49, 0x49, 0x2a, 0)],
    ['a TIFF picture', bytes(0x4d, 0x4d, 0, 0x2a)],
    ['a WebP picture', text('RIFF1234WEBPVP8 ')],
    ['a HEIC picture or an MP4 film', bytes(0, 0, 0, 0x18, 0x66, 0x74, 0x79, 0x70)],
    ['a BMP picture', bytes(0x42, 0x4d, 0x36, 0, 1, 0, 0, 0, 0, 0)],
    ['a PDF document', text('%PDF-1.7')],
    ['an RTF document', text('{\\rtf1 abc}')],
    ['a gzip archive', bytes(0x1f, 0x8b, 8)],
    ['a 7-Zip archive', bytes(0x37, 0x7a, 0xbc, 0xaf, 0x27, 0x1c)],
    ['an SQLite database', text('SQLite format 3\0')],
    ['a web page', text('\ufeff  <!DOCTYPE html><table><tr><td>SiO2</td></tr></table>')],
    ['a web page', text('<table><tr><td>1</td></tr></table>')],
    ['an XML document', text('<?xml version="1.0"?><Workbook/>')],
  ])('%s is named and refused, whatever its name', async (name, content) => {
    await expect(readTable(content, { fileName: 'analyses.csv' })).rejects.toThrow(`this file is ${name}`);
  });

  it('a table that merely begins like a foreign file is text', () => {
    expect(sniff(text('BMP-1,SiO2\n'))).toBe('text');
    expect(sniff(text('Sample,SiO2\n<html>,3\n'))).toBe('text');
  });

  it('an old workbook is told from a protected one by its streams', () => {
    const compound = (stream: string) =>
      Uint8Array.from([
        0xd0,
        0xcf,
        0x11,
        0xe0,
        0xa1,
        0xb1,
        0x1a,
        0xe1,
        ...new Array(504).fill(0),
        ...Buffer.from(stream, 'utf16le'),
      ]);
    expect(() => sniff(compound('Workbook'))).toThrow(
      'old kind (.xls, before 2007): open it and save it as XLSX',
    );
    expect(() => sniff(compound('EncryptedPackage'))).toThrow('without a password; this one is protected');
    expect(() => sniff(compound('WordDocument'))).toThrow('an old office document');
  });

  it('a file with zero bytes is no text', async () => {
    const content = Uint8Array.from([65, 44, 66, 10, 0, 7, 1, 2, 3, 200, 201]);
    await expect(readTable(content, { fileName: 'a.csv' })).rejects.toThrow(
      'not text (a zero byte at position 5)',
    );
  });

  it('an empty file, one of blanks alone and one beyond 50 MB are refused', async () => {
    await expect(readTable(new Uint8Array(0), { fileName: 'a.csv' })).rejects.toThrow('this file is empty');
    await expect(readTable(text(' \n,,\n'), { fileName: 'a.csv' })).rejects.toThrow(
      'every cell here is empty',
    );
    await expect(readTable(new Uint8Array(60 * 1024 * 1024), { fileName: 'a.csv' })).rejects.toThrow(
      'at most 50 MB; this one has 60 MB',
    );
  });
});
