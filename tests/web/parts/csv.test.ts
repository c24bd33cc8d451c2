import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { toCsv } from '../../../web/parts/csv.ts';

test('a table comes back from its CSV as it was, commas, quotes and line ends in its cells', () => {
  const cell = fc.string().filter((text) => !/^[=+\-@\t\r]/.test(text));
  const table = fc.array(fc.tuple(cell, cell), { minLength: 1 });
  fc.assert(
    fc.property(table, (rows) => {
      const read = Papa.parse<string[]>(toCsv(['a', 'b'], rows).slice(1), {
        delimiter: ',',
        newline: '\r\n',
      });
      expect(read.data.slice(1, -1)).toEqual(rows);
    }),
  );
});

test('text that a spreadsheet would run as a formula is disarmed, numbers are not', () => {
  expect(toCsv(['a', 'b'], [['=1+1', -5]])).toContain("'=1+1,-5");
  expect(toCsv(['@a'], [])).toContain("'@a");
});

test('a missing value is an empty cell', () => {
  expect(toCsv(['a', 'b'], [[null, Number.NaN]])).toBe('\uFEFFa,b\r\n,\r\n');
});
