import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decode } from '../../api/intake/decode.ts';

const SAMPLE = 'Sample,SiO2 ± µ\r\nR-17 “ä”,36.7 ± 0.4\r\n';
const utf16 = (text: string, big: boolean) => {
  const little = Buffer.from(text, 'utf16le');
  return new Uint8Array(big ? little.swap16() : little);
};
/** Windows-1252 of the sample, written by hand from the Encoding Standard's index. */
const WESTERN: Record<string, number> = { '“': 0x93, '”': 0x94, ä: 0xe4, '±': 0xb1, µ: 0xb5 };
const western = (text: string) => Uint8Array.from([...text].map((c) => WESTERN[c] ?? c.charCodeAt(0)));
/** Windows-1253: the Greek letters stand 0x2d0 below their code points. */
const greek = (text: string) =>
  Uint8Array.from(
    [...text].map((c) =>
      c.charCodeAt(0) > 0x380 ? c.charCodeAt(0) - 0x2d0 : (WESTERN[c] ?? c.charCodeAt(0)),
    ),
  );

describe('encodings', () => {
  it.each([
    ['utf-8', new TextEncoder().encode(SAMPLE)],
    ['utf-8', new TextEncoder().encode(`\ufeff${SAMPLE}`)],
    ['utf-16le', utf16(`\ufeff${SAMPLE}`, false)],
    ['utf-16be', utf16(`\ufeff${SAMPLE}`, true)],
    ['utf-16le', utf16(SAMPLE, false)],
    ['utf-16be', utf16(SAMPLE, true)],
  ])('%s is found, with or without a byte-order mark, and gives the same text', (encoding, bytes) => {
    expect(decode(bytes)).toEqual({ text: SAMPLE, encoding, warning: null });
  });

  it('Windows-1252 is read where the bytes are no UTF-8, with a warning', () => {
    const found = decode(western(SAMPLE));
    expect(found).toMatchObject({ text: SAMPLE, encoding: 'windows-1252' });
    expect(found.warning).toContain('not UTF-8; it was read as windows-1252');
  });

  it('one lone ± among thousands of plain characters is still Windows-1252', () => {
    const text = `Sample,SiO2 ±\n${'R-1,52.31,16.2,7.1\n'.repeat(500)}`;
    expect(decode(western(text)).text).toBe(text);
  });

  it('Greek words in Windows-1253 are told from Western ones', () => {
    const text =
      'Δείγμα,Ομάδα,Παρατηρήσεις\nΚ-1,Πηλός,Το δείγμα προέρχεται από την ανασκαφή\nΚ-2,Πηλός,Μαύρη διακόσμηση και επίχρισμα\n';
    expect(decode(greek(text))).toMatchObject({ text, encoding: 'windows-1253' });
  });

  it('an encoding that is asked for overrules, and must fit', () => {
    expect(decode(greek('Δ,1'), 'windows-1253').text).toBe('Δ,1');
    expect(() => decode(western(SAMPLE), 'utf-8')).toThrow('must be utf-8 throughout');
    expect(() => decode(western(SAMPLE), 'klingon')).toThrow('found klingon');
  });

  it('any text of Latin, Greek and signs survives UTF-8 and UTF-16', () => {
    const words = fc.string({ unit: fc.constantFrom(...'aZ09 ,;±µΔä€\n\t"'), minLength: 1 });
    fc.assert(
      fc.property(words, fc.boolean(), (text, big) => {
        expect(decode(new TextEncoder().encode(text)).text).toBe(text);
        expect(decode(utf16(`\ufeff${text}`, big)).text).toBe(text);
      }),
    );
  });
});
