import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closure } from '../../../api/domain/composition/closure.ts';
import { expectClose } from '../../support/close.ts';
import { R_SAYS, RAW as sherds } from '../../support/romano-british.ts';
import { positiveParts, scale } from './arbitrary.ts';

describe('closure', () => {
  it('agrees with R on the Romano-British sherds (Tubb, Parker & Nickless 1980)', () => {
    const first = sherds.slice(0, 5);
    expectClose(
      first.map((row) => closure(row)),
      R_SAYS.closure100_first5.value,
    );
    expectClose(
      first.map((row) => row.reduce((a, b) => a + b)),
      R_SAYS.rowSums_raw_first5.value,
    );
  });

  it('sums to its total, changes nothing the second time, and forgets the scale it was given', () => {
    fc.assert(
      fc.property(positiveParts(1), scale, (parts, factor) => {
        const closed = closure(parts);
        expectClose(
          closed.reduce((a, b) => a + b),
          100,
        );
        expectClose(closure(closed), closed);
        expectClose(closure(parts.map((x) => factor * x)), closed);
        expectClose(
          closure(parts, 1),
          closed.map((x) => x / 100),
        );
      }),
    );
  });

  it('keeps zeros', () => {
    expect(closure([0, 3, 1])).toEqual([0, 75, 25]);
  });

  it.each([
    [[], 'closure needs a sum above zero; 0 parts sum to 0'],
    [[0, 0], 'closure needs a sum above zero; 2 parts sum to 0'],
    [[1, -2], 'closure needs parts of zero or more; part 2 of 2 is -2'],
    [[Number.NaN, 1], 'part 1 of 2 is NaN'],
    [[1, Infinity], 'part 2 of 2 is Infinity'],
    [[1.7e308, 1.7e308], 'sum to Infinity'],
  ])('refuses %j', (parts, words) => {
    expect(() => closure(parts)).toThrow(words);
  });
});
