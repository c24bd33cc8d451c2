import fc from 'fast-check';
import { expect, test } from 'vitest';
import { UNCERTAINTY_BASES, UNITS } from '../../../api/domain/composition/types.ts';
import {
  blankRow,
  pastedRows,
  readRows,
  rowsOf,
  type ValueRow,
} from '../../../web/pages/sherds/reported-form.ts';

const row = (part: Partial<ValueRow>): ValueRow => ({ ...blankRow(0), ...part });
const wrongOf = (part: Partial<ValueRow>) => readRows([row(part)]).wrong.get(0);

test('a typed figure is read with its unit, its ± and its last digit', () => {
  const { reported, wrong } = readRows([
    row({ analyte: ' PbO ', value: '36,7', uncertainty: '0.5', basis: '1σ' }),
  ]);
  expect(wrong.size).toBe(0);
  expect(reported).toEqual([
    {
      analyte: 'PbO',
      value: 36.7,
      unit: 'wt%',
      uncertainty: 0.5,
      basis: '1σ',
      belowDetection: false,
      limit: null,
      resolution: 0.1,
    },
  ]);
});

test('“<0.01” is below detection with that limit', () => {
  const [one] = readRows([row({ analyte: 'SnO2', value: '< 0,01' })]).reported;
  expect(one).toMatchObject({ value: null, belowDetection: true, limit: 0.01, resolution: null });
});

test('a blank line is no value, and says nothing', () => {
  expect(readRows([blankRow(0), blankRow(1)])).toEqual({ reported: [], wrong: new Map() });
});

test('what cannot be read is named with its analyte', () => {
  expect(wrongOf({ analyte: 'PbO', value: '4o' })).toBe('PbO needs a number; “4o” is none.');
  expect(wrongOf({ analyte: 'PbO', value: '-4' })).toBe('PbO must not be negative; it is -4.');
  expect(wrongOf({ analyte: 'PbO', value: '4', uncertainty: 'x' })).toMatch(/± of PbO needs a number/);
  expect(wrongOf({ analyte: 'PbO', below: true, limit: '-1' })).toMatch(/limit of PbO needs a number/);
  expect(wrongOf({ analyte: 'PbO', value: '4', below: true })).toMatch(/below detection, so it has no value/);
  expect(wrongOf({ value: '4' })).toMatch(/Name the analyte/);
});

test('an analyte given twice is refused where it occurs the second time', () => {
  const rows = [row({ key: 0, analyte: 'PbO', value: '1' }), row({ key: 1, analyte: 'PbO', value: '2' })];
  const { reported, wrong } = readRows(rows);
  expect(reported).toHaveLength(1);
  expect([...wrong]).toEqual([[1, 'PbO must occur once; it is given twice.']]);
});

test('stored values open in the form and come back the same', () => {
  const decimals = fc.integer({ min: 0, max: 4 });
  const stored = fc
    .record({
      below: fc.boolean(),
      digits: fc.integer({ min: 0, max: 999_999 }),
      decimals,
      unit: fc.constantFrom(...UNITS),
      basis: fc.constantFrom(...UNCERTAINTY_BASES),
      uncertainty: fc.option(fc.double({ min: 0.001, max: 10, noNaN: true })),
      limit: fc.option(fc.double({ min: 0.001, max: 10, noNaN: true })),
    })
    .map(({ below, digits, decimals: places, unit, basis, uncertainty, limit }) => ({
      analyte: 'PbO',
      value: below ? null : Number((digits / 10 ** places).toFixed(places)),
      unit,
      uncertainty: below ? null : uncertainty,
      basis: below || uncertainty === null ? null : basis,
      belowDetection: below,
      limit,
      resolution: below ? null : 10 ** -places,
    }));
  fc.assert(
    fc.property(stored, (value) => {
      expect(readRows(rowsOf([value]))).toEqual({ reported: [value], wrong: new Map() });
    }),
  );
});

test('lines copied from a spreadsheet become rows, downwards or across', () => {
  const down = pastedRows('SiO2\t45.2\t0.3\nPbO\t36,7\t\n', blankRow(0), 7);
  expect(down.map(({ key, analyte, value, uncertainty }) => [key, analyte, value, uncertainty])).toEqual([
    [7, 'SiO2', '45.2', '0.3'],
    [8, 'PbO', '36,7', ''],
  ]);
  const across = pastedRows('SiO2\tPbO\tMnO\n45.2\t36.7\t<0.1', blankRow(0), 0);
  expect(across.map(({ analyte, value }) => [analyte, value])).toEqual([
    ['SiO2', '45.2'],
    ['PbO', '36.7'],
    ['MnO', '<0.1'],
  ]);
});
