import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { touch } from '../../api/figures/box.ts';
import { dotCounter } from '../../api/figures/dot-counter.ts';
import { placeLabels } from '../../api/figures/labels.ts';

const bounds = { left: 0, top: 0, right: 600, bottom: 400 };
const wish = fc.record({
  x: fc.integer({ min: 0, max: 600 }),
  y: fc.integer({ min: 0, max: 400 }),
  markRadius: fc.integer({ min: 2, max: 8 }),
  width: fc.integer({ min: 10, max: 120 }),
  height: fc.constant(14),
});
const dot = fc.record({
  x: fc.double({ min: 0, max: 600, noNaN: true }),
  y: fc.double({ min: 0, max: 400, noNaN: true }),
});

describe('names on a plot', () => {
  it('never touch one another, a kept box or the edge', () => {
    const kept = [{ left: 200, right: 300, top: 100, bottom: 200 }];
    fc.assert(
      fc.property(fc.array(wish, { maxLength: 40 }), fc.array(dot, { maxLength: 50 }), (wishes, dots) => {
        const placed = placeLabels(wishes, { bounds, kept, dots }).filter((label) => label !== null);
        placed.forEach(({ box }, i) => {
          expect(box.left >= 0 && box.right <= 600 && box.top >= 0 && box.bottom <= 400).toBe(true);
          for (const other of [...kept, ...placed.slice(0, i).map((label) => label.box)])
            expect(touch(box, other)).toBe(false);
        });
      }),
    );
  });
  it('stand to the right of their mark when nothing is in the way', () => {
    const [label] = placeLabels([{ x: 100, y: 100, markRadius: 5, width: 50, height: 14 }], {
      bounds,
      kept: [],
      dots: [],
    });
    expect(label).toEqual({ box: { left: 107, right: 157, top: 93, bottom: 107 }, leader: false });
  });
  it('turn to the other side where dots would be hidden', () => {
    const dots = Array.from({ length: 8 }, (_, i) => ({ x: 110 + 6 * i, y: 100 }));
    const [label] = placeLabels([{ x: 100, y: 100, markRadius: 5, width: 50, height: 14 }], {
      bounds,
      kept: [],
      dots,
    });
    expect(label!.box.right).toBeLessThan(100);
  });
  it('are left out, not piled up, where there is no room', () => {
    const tight = { left: 0, top: 0, right: 60, bottom: 20 };
    const here = { x: 5, y: 10, markRadius: 2, width: 40, height: 14 };
    expect(placeLabels([here, here], { bounds: tight, kept: [], dots: [] }).map(Boolean)).toEqual([
      true,
      false,
    ]);
  });
});

describe('counting dots in a box', () => {
  it('agrees with counting them one by one on the 4 px grid', () => {
    const edge = (most: number) => fc.integer({ min: 0, max: most / 4 }).map((cell) => cell * 4);
    fc.assert(
      fc.property(fc.array(dot), edge(600), edge(600), edge(400), edge(400), (dots, x1, x2, y1, y2) => {
        const box = {
          left: Math.min(x1, x2),
          right: Math.max(x1, x2),
          top: Math.min(y1, y2),
          bottom: Math.max(y1, y2),
        };
        const within = dots.filter(
          ({ x, y }) =>
            x >= box.left && x < box.right && y >= box.top && y < box.bottom && x < 600 && y < 400,
        );
        expect(dotCounter(dots, bounds)(box)).toBe(within.length);
      }),
    );
  });
});
