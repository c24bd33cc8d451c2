import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { colourOf, cornersOf, MARKS, markOf, marksPath } from '../../api/figures/marks.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { middleOf, piecesOf } from './drawing.ts';

type Corners = ReturnType<typeof cornersOf>;

/** Even-odd rule on a grid of 120 × 120 over the mark. */
function cells(corners: Corners): boolean[] {
  const side = 120;
  return Array.from({ length: side * side }, (_, k) => {
    const x = ((k % side) / side - 0.5) * 2.6;
    const y = (Math.floor(k / side) / side - 0.5) * 2.6;
    return corners.reduce((odd, [x1, y1], i) => {
      const [x2, y2] = corners[(i + 1) % corners.length]!;
      return y1 > y !== y2 > y && x < ((x2 - x1) * (y - y1)) / (y2 - y1) + x1 ? !odd : odd;
    }, false);
  });
}

describe('marks', () => {
  const filled = MARKS.map((mark) => cells(cornersOf(mark, 1)));

  it('are at least ten, no two covering more than 85 % of the same ground', () => {
    expect(MARKS.length).toBeGreaterThanOrEqual(10);
    for (let i = 1; i < filled.length; i++)
      for (let j = 0; j < i; j++) {
        const both = filled[i]!.filter((cell, k) => cell && filled[j]![k]).length;
        const either = filled[i]!.filter((cell, k) => cell || filled[j]![k]).length;
        expect(both / either, `${MARKS[i]} and ${MARKS[j]}`).toBeLessThan(0.85);
      }
  });
  it('all have the same area', () => {
    for (const [i, cellsOfMark] of filled.entries()) {
      const area = cellsOfMark.filter(Boolean).length * (2.6 / 120) ** 2;
      expect(area, MARKS[i]).toBeCloseTo(1, 1);
    }
  });
  it('and colours together tell 24 groups apart', () => {
    const looks = Array.from(
      { length: 24 },
      (_, slot) => `${markOf(slot)} ${colourOf(slot, THEMES['page-light'])}`,
    );
    expect(new Set(looks).size).toBe(24);
  });
  it('stand where their dots are, to a tenth of a pixel', () => {
    const dot = fc.record({
      x: fc.double({ min: -500, max: 2000, noNaN: true }),
      y: fc.double({ min: -500, max: 2000, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.constantFrom('square' as const, 'diamond' as const, 'plus' as const),
        fc.array(dot),
        (mark, dots) => {
          const pieces = piecesOf(marksPath(mark, 8, dots));
          expect(pieces.length).toBe(dots.length);
          pieces.forEach((piece, i) => {
            const [x, y] = middleOf(piece);
            expect(Math.abs(x - dots[i]!.x)).toBeLessThan(0.1);
            expect(Math.abs(y - dots[i]!.y)).toBeLessThan(0.1);
          });
        },
      ),
    );
  });
  it('of no dots are an empty path', () => {
    expect(marksPath('star', 8, [])).toBe('');
  });
});
