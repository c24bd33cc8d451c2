import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  count,
  readNumber,
  resolutionOf,
  showAnalyte,
  showSignificant,
  showUncertainty,
  showValue,
} from '../../../web/parts/numbers.ts';

test('a figure keeps the digits it was written in, trailing zeros too', () => {
  expect(showValue(36.7, { resolution: 0.1 })).toBe('36.7');
  expect(showValue(0.15, { resolution: 0.001 })).toBe('0.150');
  expect(showValue(1200, { resolution: 1, uncertainty: 0.5 })).toBe('1200');
});

test('without a last digit known, a figure shows as many decimals as its ±', () => {
  expect(showValue(36.7123, { uncertainty: 0.5 })).toBe('36.7');
  expect(showValue(36.7123, { uncertainty: 0.123 })).toBe('36.71');
  expect(showValue(36.7123)).toBe('36.7');
});

test('the figure after ± has two significant digits at most', () => {
  expect(showUncertainty(0.5)).toBe('0.5');
  expect(showUncertainty(0.1234)).toBe('0.12');
  expect(showUncertainty(12.6)).toBe('13');
});

test('small and large figures stay readable, negative ones carry a true minus sign', () => {
  expect(showSignificant(0.000123)).toBe('0.000123');
  expect(showSignificant(123456)).toBe('123456');
  expect(showSignificant(-1.5)).toBe('\u22121.50');
  expect(showSignificant(1e-9)).toBe('1.00e\u22129');
  expect(showSignificant(0)).toBe('0');
});

test('a figure shown to three digits is within half a unit of the third digit', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-4, max: 1e6, noNaN: true }), (value) => {
      const shown = Number(showSignificant(value));
      expect(Math.abs(shown - value) / value).toBeLessThanOrEqual(0.005 + 1e-9);
    }),
  );
});

test('decimal commas, thin spaces and minus signs are read as people write them', () => {
  expect(readNumber('36,7')).toBe(36.7);
  expect(readNumber(' 1 200 ')).toBe(1200);
  expect(readNumber('1\u202F200,5')).toBe(1200.5);
  expect(readNumber('\u22123')).toBe(-3);
  expect(readNumber('.5')).toBe(0.5);
});

test('what is no number is not guessed at', () => {
  for (const text of ['', 'bdl', '<0.01', '1.2.3', '1,2,3', '12 %', '1e', '--3', '٣'])
    expect(readNumber(text), text).toBeNull();
});

test('the last digit typed is known from the text', () => {
  expect(resolutionOf('36.7')).toBeCloseTo(0.1, 12);
  expect(resolutionOf('0,150')).toBeCloseTo(0.001, 12);
  expect(resolutionOf('12')).toBe(1);
  expect(resolutionOf('bdl')).toBeNull();
});

test('oxides are shown with lowered digits, other names as they are', () => {
  expect(showAnalyte('Fe2O3')).toBe('Fe₂O₃');
  expect(showAnalyte('PbO')).toBe('PbO');
  expect(showAnalyte('LOI')).toBe('LOI');
});

test('one thing is counted in the singular', () => {
  expect(count(1, 'analysis', 'analyses')).toBe('1 analysis');
  expect(count(0, 'study', 'studies')).toBe('0 studies');
  expect(count(12000, 'row')).toBe('12,000 rows');
});
