import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cell, type Field, readCsv, writeCsv } from '../../api/export/bundle/csv.ts';

const FIELDS: Field[] = [
  { name: 'words', type: 'string' },
  { name: 'maybe', type: 'string', nullable: true },
  { name: 'number', type: 'number' },
  { name: 'flag', type: 'boolean' },
];
const tricky = fc.oneof(
  fc.string({ unit: 'binary' }).filter((text) => !text.includes('\0')),
  fc.constantFrom("'=1+1", '=1+1', "''-x", '@a', '\t', 'a\r\nb', 'a\nb', '"q"', ',', "'", ' x '),
);
const row = fc.tuple(
  tricky,
  fc.option(tricky.filter((text) => text !== '')),
  fc.option(fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => (value === 0 ? 0 : value))),
  fc.boolean(),
);
const text = (rows: readonly Cell[][]) => writeCsv(FIELDS, rows);

describe('a table of a bundle', () => {
  it('gives back every text and every number as it was, bit for bit', () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
        const back = readCsv(FIELDS, text(rows)).map((one) => FIELDS.map(({ name }) => one[name]));
        expect(back).toEqual(rows);
      }),
    );
  });
  it('holds no cell that a spreadsheet would run', () => {
    fc.assert(
      fc.property(tricky, (words) => {
        const cell = text([[words, null, null, true]])
          .split('\r\n')
          .slice(1)
          .join('\r\n');
        expect(cell.replace(/^"/, '')).not.toMatch(/^[=+\-@\t]/);
      }),
    );
  });
  it.each([
    ['a,b\r\n1,2\r\n', 'its columns are a, b'],
    ['words,maybe,number,flag\r\na,b,1\r\n', 'cells'],
    ['words,maybe,number,flag\r\na,b,one,true\r\n', 'number is one'],
    ['words,maybe,number,flag\r\na,b,1,yes\r\n', 'flag is yes'],
  ])('that is not what was written is refused: %j', (written, words) => {
    expect(() => readCsv(FIELDS, written)).toThrow(words);
  });
});
