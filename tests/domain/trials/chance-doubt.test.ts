import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { predictChance } from '../../../api/domain/trials/chance.ts';
import { doubtInWords } from '../../../api/domain/trials/chance-doubt.ts';
import type { Factor } from '../../../api/domain/trials/types.ts';
import { COATS, ROAST, trialZone } from '../../support/trial-zones.ts';

const THICKNESS: Factor = { name: 'thickness', kind: 'number', unit: 'µm', step: 10 };
const wide = (at: number | string) => ({ at, low: 0.02, high: 0.95 });
const narrow = (at: number | string) => ({ at, low: 0.4, high: 0.6 });

describe('where a chance cannot be told', () => {
  it('is said of each stretch by itself, with all that it leaves open', () => {
    const points = [wide(1), narrow(2), wide(3), { at: 4, low: 0.001, high: 0.9 }, narrow(5)];
    expect(doubtInWords(COATS, points)).toEqual([
      'At 1 coat these tiles cannot tell: anything from 2 % to 95 %.',
      'From 3 to 4 coats these tiles cannot tell: anything from under 1 % to 95 %.',
    ]);
    expect(doubtInWords(THICKNESS, [wide(40.04), wide(62.5)])[0]).toMatch(
      /^With thickness from 40 to 62.5 µm /,
    );
  });

  it('is said of levels one by one, since none lies between', () => {
    expect(doubtInWords(ROAST, [wide('long'), wide('short')])).toEqual([
      'With roast long these tiles cannot tell: anything from 2 % to 95 %.',
      'With roast short these tiles cannot tell: anything from 2 % to 95 %.',
    ]);
  });

  it('is not said of a band narrower than 80 of 100', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        fc.double({ min: 0, max: 0.79, noNaN: true }),
        (low, w) => {
          expect(doubtInWords(COATS, [{ at: 1, low, high: low + w }])).toEqual([]);
        },
      ),
    );
    expect(doubtInWords(COATS, [])).toEqual([]);
  });

  it('opens the note of a curve from three tiles that came out unlike, and of none from many alike', () => {
    const tiles = (from: readonly number[]) =>
      from.flatMap((f, t) =>
        [1, 2, 3, 4, 5, 6].map((coats) =>
          trialZone(`T${t}`, { coats }, { grade: coats >= f ? 'glossy' : 'matt', label: `A${coats}` }),
        ),
      );
    const note = (from: readonly number[]) =>
      predictChance(tiles(from), { factors: [COATS], outcome: 'glossy', seed: 1, against: 'coats' }).note;
    expect(note([1, 4, 7])).toMatch(/^From 1 to 6 coats these tiles cannot tell: anything from/);
    expect(note([3, 4, 3, 5, 4, 3, 4, 5, 4, 3])).toMatch(/^The 95 % band/);
  });
});
