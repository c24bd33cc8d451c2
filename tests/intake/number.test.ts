import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalEvidence, readNumber, tidyNumber } from '../../api/intake/number.ts';

const read = (text: string, decimal: '.' | ',') => readNumber(tidyNumber(text), decimal);

describe('figures as written', () => {
  it.each([
    ['36.7', '.', 36.7, 0.1],
    ['36.70', '.', 36.7, 0.01],
    ['36,70', ',', 36.7, 0.01],
    ['1,234', '.', 1234, 1],
    ['1,234', ',', 1.234, 0.001],
    ['1.234,50', ',', 1234.5, 0.01],
    ['1\u00a0234,5', ',', 1234.5, 0.1],
    ['1\u202f234\u202f567', '.', 1234567, 1],
    ["12'345.6", '.', 12345.6, 0.1],
    ['1,234,567.8', '.', 1234567.8, 0.1],
    ['\u22120.5', '.', -0.5, 0.1],
    ['.5', '.', 0.5, 0.1],
    ['5.', '.', 5, 1],
    ['1.20E-03', '.', 0.0012, 1e-5],
    ['0', '.', 0, 1],
  ] as const)('%j with decimal %j is %d, to %d', (text, decimal, value, resolution) => {
    expect(read(text, decimal)).toEqual({ value, resolution });
  });

  it.each([
    ['12,3', '.'],
    ['12.3', ','],
    ['1.234', ','],
    ['0,123', '.'],
    ['1.2.3', '.'],
    ['12 34', '.'],
    ['0x10', '.'],
    ['1e999', '.'],
    ['1_000', '.'],
    ['٣', '.'],
    ['--5', '.'],
    ['Infinity', '.'],
    ['', '.'],
  ] as const)('%j with decimal %j is no figure', (text, decimal) => {
    expect(read(text, decimal)).toBeNull();
  });

  it('any decimal figure reads back as itself in every spelling', () => {
    const groups = fc.constantFrom('', ' ', '\u00a0', '\u202f', "'", 'other');
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999_999, max: 99_999_999 }),
        fc.integer({ min: 0, max: 6 }),
        fc.constantFrom('.' as const, ',' as const),
        groups,
        (units, decimals, decimal, group) => {
          const plain = (units / 10 ** decimals).toFixed(decimals);
          const [whole = '', fraction] = plain.split('.');
          const other = decimal === '.' ? ',' : '.';
          const separator = group === 'other' ? other : group;
          const grouped = whole.replace(/\B(?=(\d{3})+$)/g, separator);
          const ambiguous =
            group === 'other' && decimal === ',' && fraction === undefined && grouped.split('.').length === 2;
          fc.pre(!ambiguous);
          const text = fraction === undefined ? grouped : grouped + decimal + fraction;
          expect(read(text, decimal)).toEqual({ value: Number(plain), resolution: Number(`1e-${decimals}`) });
        },
      ),
    );
  });
});

describe('the decimal mark', () => {
  it('counts what only one mark explains, and apart what both could', () => {
    expect(decimalEvidence(['36.7', '0.123', '1,234.5', '<0.05'])).toEqual({
      points: 4,
      commas: 0,
      eitherPoint: 0,
      eitherComma: 0,
    });
    expect(decimalEvidence(['36,7', '0,123', '1.234,5', '< 0,05'])).toEqual({
      points: 0,
      commas: 4,
      eitherPoint: 0,
      eitherComma: 0,
    });
    expect(decimalEvidence(['1,234', '12.345', '120', 'R-1'])).toEqual({
      points: 0,
      commas: 0,
      eitherPoint: 1,
      eitherComma: 1,
    });
  });
});
