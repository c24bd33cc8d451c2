import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closure } from '../../../api/domain/composition/closure.ts';
import { clr, clrInverse, logsOf } from '../../../api/domain/composition/log-ratio.ts';
import { expectClose } from '../../support/close.ts';
import { R_SAYS, RAW as sherds } from '../../support/romano-british.ts';
import { positiveParts, scale } from './arbitrary.ts';

describe('clr', () => {
  it('agrees with R on the Romano-British sherds, row by row and in the mean', () => {
    const rows = sherds.map(clr);
    expectClose(rows.slice(0, 5), R_SAYS.clr_first5.value);
    const mean = rows[0]!.map((_, j) => rows.reduce((sum, row) => sum + row[j]!, 0) / rows.length);
    expectClose(mean, R_SAYS.clr_mean.value);
  });

  it('sums to zero and is the same for any scale of the parts', () => {
    fc.assert(
      fc.property(positiveParts(1), scale, (parts, factor) => {
        const z = clr(parts);
        expect(Math.abs(z.reduce((a, b) => a + b))).toBeLessThan(1e-11);
        expectClose(clr(parts.map((x) => factor * x)).map(Math.exp), z.map(Math.exp));
      }),
    );
  });

  it('is undone by its inverse', () => {
    fc.assert(
      fc.property(positiveParts(1), (parts) => {
        expectClose(clrInverse(clr(parts)), closure(parts));
      }),
    );
  });

  it('comes back from log-ratios far beyond what an exponential holds', () => {
    expect(clrInverse([2000, 2000, -2000])).toEqual([50, 50, 0]);
    expectClose(clrInverse([-2000, -2000]), [50, 50]);
  });

  it.each([
    [[], 'clr needs at least one part'],
    [[1, 0], 'clr needs positive parts; part 2 of 2 is 0'],
    [[-1, 1], 'part 1 of 2 is -1'],
    [[1, Number.NaN], 'part 2 of 2 is NaN'],
    [[1, Infinity], 'part 2 of 2 is Infinity'],
  ])('refuses %j', (parts, words) => {
    expect(() => clr(parts)).toThrow(words);
  });

  it('has no inverse for numbers that are not finite', () => {
    expect(() => clrInverse([])).toThrow('a composition needs finite log-ratios; found []');
    expect(() => clrInverse([1, Number.NaN])).toThrow('found [1, NaN]');
  });

  it('names the method that asked for logarithms', () => {
    expect(() => logsOf([0], 'ilr')).toThrow('ilr needs positive parts; part 1 of 1 is 0');
  });
});
