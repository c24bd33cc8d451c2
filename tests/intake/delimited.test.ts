import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it, vi } from 'vitest';
import { chooseDelimiter, delimitedChunks, tabsForBlanks } from '../../api/intake/delimited.ts';
import { readPasted, readTable } from '../../api/intake/read-table.ts';

vi.setConfig({ testTimeout: 60_000 });

const rowsOf = (text: string, delimiter = ',') =>
  [...delimitedChunks(text, delimiter)].flat().map((r) => [...r.cells]);
const encode = (text: string) => new TextEncoder().encode(text);

describe('the delimiter', () => {
  it.each([
    [',', 'Sample,SiO2,PbO\nR-1,36.7,55.1\n'],
    [';', 'Probe;SiO2;PbO\nR-1;36,7;55,1\nR-2;30,1;60,2\n'],
    [';', 'Probe;SiO2\nR-1;36,7\nR-2;30,1\n'],
    ['\t', 'Sample\tSiO2, wt%\tPbO, wt%\nR-1\t36,7\t55,1\n'],
    ['|', 'Sample|SiO2|PbO\nR-1|36.7|55.1\n'],
    [',', 'Table 1; analyses; all in wt%\nSample,SiO2,PbO\nR-1,36.7,55.1\nR-2; a,30,60\n'],
    [',', '"Tile; black, with slip",SiO2,PbO\n"a;b",36.7,55.1\n'],
  ])('%j is found in %j', (delimiter, text) => {
    expect(chooseDelimiter(text)).toBe(delimiter);
  });

  it('a spreadsheet’s sep= line is believed', () => {
    expect(chooseDelimiter('sep=|\nSample|SiO2,5\n')).toBe('|');
  });

  it('columns set apart by blanks become cells when pasted', async () => {
    expect(tabsForBlanks('Sample    SiO2   PbO\nR-1 a     36.7   55.1\n')).toBe(
      'Sample\tSiO2\tPbO\nR-1 a\t36.7\t55.1\n',
    );
    expect((await readPasted('Sample    SiO2   PbO\nR-1 a     36.7   55.1\n')).head[1]!.cells).toEqual([
      'R-1 a',
      '36.7',
      '55.1',
    ]);
    expect(tabsForBlanks('Sample,  SiO2\nR-1,  36.7\n')).toBe('Sample,  SiO2\nR-1,  36.7\n');
  });
});

describe('rows of delimited text', () => {
  it('quotes enclose delimiters, doubled quotes and line ends; rows count records', () => {
    const text = 'a,"b, c","say ""x"""\r\n"two\nlines",2,3\r\n4,5,6';
    const rows = [...delimitedChunks(text, ',')].flat();
    expect(rows.map((r) => r.number)).toEqual([1, 2, 3]);
    expect(rows.map((r) => r.cells)).toEqual([
      ['a', 'b, c', 'say "x"'],
      ['two\nlines', '2', '3'],
      ['4', '5', '6'],
    ]);
  });

  it('lines may end in CR alone, as on old Macintosh computers', () => {
    expect(rowsOf('a,b\r1,2\r')).toEqual([
      ['a', 'b'],
      ['1', '2'],
    ]);
  });

  it('empty lines keep their row number', () => {
    expect([...delimitedChunks('a,b\n\n\n1,2\n', ',')].flat().at(-1)!.number).toBe(4);
  });

  it('a quotation mark left open is refused with its row', async () => {
    await expect(readTable(encode('Sample,SiO2\nR-1,"36.7\nR-2,30\n'), { fileName: null })).rejects.toThrow(
      'the one in row 2 is not',
    );
  });

  it('a row that never ends is refused before it fills the memory', async () => {
    const endless = `Sample,SiO2\nR-1,"${'x,'.repeat(3_000_000)}`;
    await expect(readTable(encode(endless), { fileName: null })).rejects.toThrow(
      /row 2 is longer: is a quotation mark/,
    );
  });

  it('5,000 columns are refused, however many of them trail empty', async () => {
    const wide = (last: string) => encode(`Sample${',SiO2'.repeat(10)}${','.repeat(5_000)}${last}\nR-1,5\n`);
    await expect(readTable(wide('x'), { fileName: null })).rejects.toThrow(
      'at most 1,000 columns; row 1 reaches column 5,011',
    );
    expect((await readTable(wide(''), { fileName: null })).columnCount).toBe(11);
  });

  it('more than 250,000 rows are refused', async () => {
    await expect(readTable(encode('a,b\n'.repeat(250_001)), { fileName: null })).rejects.toThrow(
      'at most 250,000 rows',
    );
  });

  it('any grid written by another CSV writer is read back the same, across window borders too', () => {
    const cell = fc.oneof(
      fc.string({ unit: fc.constantFrom(...'ab1 ,;"\n.é'), maxLength: 8 }),
      fc.constant('x'.repeat(40_000)),
      fc.constant('"'.repeat(9_000)),
    );
    const grid = fc.integer({ min: 1, max: 4 }).chain((width) =>
      fc.array(fc.array(cell, { minLength: width + 1, maxLength: width + 1 }), {
        minLength: 1,
        maxLength: 8,
      }),
    );
    fc.assert(
      fc.property(
        grid,
        fc.constantFrom(',', ';', '\t'),
        fc.constantFrom('\n', '\r\n'),
        (rows, delimiter, newline) => {
          expect(rowsOf(Papa.unparse(rows, { delimiter, newline, quotes: true }), delimiter)).toEqual(rows);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('a large table comes in chunks of at most 500 rows, in order, as often as asked', async () => {
    const table = await readTable(encode(`a,b\n${'1.25,2.5\n'.repeat(20_000)}`), { fileName: null });
    for (const _ of [1, 2]) {
      const chunks = [...table.chunks()];
      expect(Math.max(...chunks.map((c) => c.length))).toBeLessThanOrEqual(500);
      expect(chunks.flat().map((r) => r.number)).toEqual(Array.from({ length: 20_001 }, (_, i) => i + 1));
    }
    expect(table).toMatchObject({ rowCount: 20_001, columnCount: 2, kind: 'csv' });
  });
});
