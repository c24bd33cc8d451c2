import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineArea, requireOutline, runsInside } from '../../../api/domain/colour/outline.ts';
import type { Outline } from '../../../api/domain/colour/types.ts';

const box = (x: number, y: number, width: number, height: number): Outline => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];
const countOf = (outline: Outline, width: number, height: number) =>
  runsInside(outline, { width, height }).reduce((sum, run) => sum + run.to - run.from, 0);
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('outlines', () => {
  it('share the pixels out: none is in two neighbours, none is lost', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.95, noNaN: true }), (cut) => {
        const parts = [box(0, 0, cut, 1), box(cut, 0, 1 - cut, 1)].map((one) => countOf(one, 97, 31));
        expect(parts[0]! + parts[1]!).toBe(97 * 31);
      }),
    );
  });
  it('hold about as many pixels as their area says, whichever way round they are drawn', () => {
    fc.assert(
      fc.property(fc.tuple(share, share), fc.tuple(share, share), fc.tuple(share, share), (a, b, c) => {
        const outline: Outline = [a, b, c];
        fc.pre(outlineArea(outline) > 0.01);
        const inside = countOf(outline, 400, 300);
        expect(inside).toBe(countOf([c, b, a], 400, 300));
        // At most about one pixel of error along the way round, 4 pictures' sides at the very most.
        expect(Math.abs(inside - outlineArea(outline) * 120_000)).toBeLessThan(1400);
      }),
    );
  });
  it('with a bay leave it out', () => {
    const bay: Outline = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0.5, 0.5],
      [0, 1],
    ];
    expect(outlineArea(bay)).toBeCloseTo(0.75, 12);
    expect(countOf(bay, 200, 200) / 40_000).toBeCloseTo(0.75, 2);
    expect(runsInside(bay, { width: 10, height: 10 }).filter(({ row }) => row === 8)).toHaveLength(2);
  });
  it.each<[Outline, string]>([
    [
      [
        [0, 0],
        [1, 1],
      ],
      'at least three corners; found 2',
    ],
    [box(0.5, 0.5, 0.6, 0.1), 'inside the picture, 0 to 1; corner 2 is at 1.1, 0.5'],
    [
      [
        [0, 0],
        [1, 1],
        [1, 0],
        [0, 1],
      ],
      'do not cross; those after corners 1 and 3 do',
    ],
    [box(0.5, 0.5, 1e-4, 1e-4), 'a millionth of the picture or more; found 1.0e-8'],
    [
      [
        [Number.NaN, 0],
        [1, 1],
        [1, 0],
      ],
      'inside the picture',
    ],
  ])('%j is refused', (outline, words) => {
    expect(() => requireOutline(outline)).toThrow(words);
  });
});
