import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readRows, showRows } from '../../../web/pages/intake/rows-text.ts';

test('rows are read singly and in runs, in any order', () => {
  expect(readRows('12-14, 9')).toEqual([9, 12, 13, 14]);
  expect(readRows(' 3;3 4 ')).toEqual([3, 4]);
  expect(readRows('')).toEqual([]);
});

test('what is no row is not guessed at', () => {
  for (const text of ['nine', '0', '5-3', '1-', '1-99999999', '-4']) expect(readRows(text), text).toBeNull();
});

test('rows written out are read back the same', () => {
  const rows = fc.uniqueArray(fc.integer({ min: 1, max: 500 }));
  fc.assert(
    fc.property(rows, (some) => {
      expect(readRows(showRows(some))).toEqual(some.toSorted((a, b) => a - b));
    }),
  );
});
