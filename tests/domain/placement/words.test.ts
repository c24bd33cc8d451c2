import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainName } from '../../../api/domain/placement/element-names.ts';
import {
  factorInWords,
  fractionInWords,
  listInWords,
  oddsInWords,
} from '../../../api/domain/placement/words.ts';

describe('shares in words', () => {
  it.each([
    [0.02, 'a tenth'],
    [0.11, 'a tenth'],
    [0.19, 'a fifth'],
    [0.26, 'a quarter'],
    [0.34, 'a third'],
    [0.51, 'half'],
    [0.66, 'two thirds'],
    [0.76, 'three quarters'],
    [0.81, 'four fifths'],
    [0.9, 'nine tenths'],
    [1, 'almost all'],
  ])('%f is %s', (share, words) => {
    expect(fractionInWords(share)).toBe(words);
  });
});

describe('odds in words', () => {
  it.each([
    [0.99, 'nearly all'],
    [0.7, 'about 7 in 10'],
    [0.5, 'about 1 in 2'],
    [0.41, 'about 2 in 5'],
    [0.1, 'about 1 in 10'],
    [0.033, 'about 1 in 30'],
    [0.00407, 'about 1 in 250'],
    [0.001, 'about 1 in 1,000'],
    [0.00099, 'fewer than 1 in 1,000'],
    [0, 'fewer than 1 in 1,000'],
  ])('%f is %s', (p, words) => {
    expect(oddsInWords(p)).toBe(words);
  });

  it('stay within a tenth of the probability they stand for', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.949, noNaN: true }), (p) => {
        const [, a, b] = /about (\d+) in ([\d,]+)/.exec(oddsInWords(p))!;
        const said = Number(a) / Number(b!.replace(',', ''));
        expect(Math.abs(said - p)).toBeLessThanOrEqual(p < 0.1 ? 0.06 * p : 0.0501);
      }),
    );
  });
});

describe('factors, lists and names in words', () => {
  it.each([
    [1.03, '1.03 times too high'],
    [0.5556, '1.8 times too low'],
    [9.96, '10 times too high'],
    [0.0123, '81 times too low'],
  ])('%f is %s', (factor, words) => {
    expect(factorInWords(factor)).toBe(words);
  });

  it('joins one, two and three', () => {
    expect([['a'], ['a', 'b'], ['a', 'b', 'c']].map((list) => listInWords(list))).toEqual([
      'a',
      'a and b',
      'a, b and c',
    ]);
    expect(listInWords(['a', 'b'], 'or')).toBe('a or b');
  });

  it.each([
    ['Pb3O4', 'lead'],
    ['K2O', 'potassium'],
    ['SO3', 'sulfur'],
    ['SiO2', 'silicon'],
    ['SnO2', 'tin'],
    ['CoO', 'cobalt'],
    ['Cu', 'copper'],
    ['Lu2O3', 'Lu2O3'],
  ])('%s is %s', (oxide, name) => {
    expect(plainName(oxide)).toBe(name);
  });
});
