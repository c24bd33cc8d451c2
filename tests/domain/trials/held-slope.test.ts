import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { takeOut } from '../../../api/domain/trials/columns.ts';
import { heldSlope } from '../../../api/domain/trials/held-slope.ts';
import { permutationSlope } from '../../../api/domain/trials/permutation-slope.ts';
import { permutedEffect } from '../../../api/domain/trials/permuted-effect.ts';
import { expectClose } from '../../support/close.ts';

interface Answer {
  readonly y: number[];
  readonly x: number[];
  readonly others: number[][];
  readonly blocks: number[];
  readonly slopes: number[];
  readonly estimate: number;
  readonly orders: number;
  readonly p: number[];
}
const file = path.resolve(import.meta.dirname, '../../fixtures/trials/held_slope.json');
const ANSWERS: Record<string, Answer> = JSON.parse(readFileSync(file, 'utf8'));
const options = { level: 0.95, seed: 5 };

/** Units in two blocks of five, with one held column that goes with x. */
const units = fc.nat(1e6).map((seed) => {
  const { normal } = randomStream(seed);
  const z = Array.from({ length: 10 }, () => normal());
  return {
    blocks: z.map((_, i) => i % 2),
    x: z.map((v) => v + normal()),
    y: z.map((v) => v + normal()),
    z,
  };
});
const few = { level: 0.8, seed: 2 };

describe('heldSlope gives what R’s lm gives over every order of the residuals (held_slope.json)', () => {
  it.each(['one_block', 'two_blocks'])(
    '%s: the slope, the orders and p, of no effect and of others',
    (name) => {
      const { y, x, others, blocks, slopes, estimate, orders, p } = ANSWERS[name]!;
      const at = (slope: number) =>
        heldSlope({ blocks, x, y: y.map((v, i) => v - slope * x[i]!) }, others, options);
      const found = at(0);
      expectClose([found.estimate, found.arrangements], [estimate, orders]);
      expectClose(
        slopes.map((slope) => at(slope).p),
        p,
      );
    },
  );
});

describe('heldSlope', () => {
  it('does not move when a held column has an effect of its own, and moves with y', () => {
    fc.assert(
      fc.property(units, fc.double({ min: -5, max: 5, noNaN: true }), ({ blocks, x, y, z }, slope) => {
        const plain = heldSlope({ blocks, x, y }, [z], few);
        const more = y.map((v, i) => v + 7 * z[i]! + slope * x[i]! + 3 * blocks[i]!);
        const moved = heldSlope({ blocks, x, y: more }, [z], few);
        expectClose(
          [moved.estimate - slope, moved.low! - slope, moved.high! - slope],
          [plain.estimate, plain.low!, plain.high!],
          { relative: 1e-6, floor: 1 },
        );
      }),
      { numRuns: 8 },
    );
  });

  it('has limits at which its own test turns', () => {
    fc.assert(
      fc.property(units, ({ blocks, x, y, z }) => {
        const { low, high } = heldSlope({ blocks, x, y }, [z], few);
        const pAt = (slope: number) =>
          heldSlope({ blocks, x, y: y.map((v, i) => v - slope * x[i]!) }, [z], few).p;
        expect(low!).toBeLessThan(high!);
        expect(pAt(low! + 1e-6)).toBeGreaterThan(0.2);
        expect(pAt(low! - 1e-6)).toBeLessThanOrEqual(0.2);
        expect(pAt(high! - 1e-6)).toBeGreaterThan(0.2);
        expect(pAt(high! + 1e-6)).toBeLessThanOrEqual(0.2);
      }),
      { numRuns: 4 },
    );
  });

  it('calls a factor without effect as often as it says, where permuting residuals as they are calls it oftener', () => {
    const { normal, uniform } = randomStream(20261125);
    const blocks = [1, 1, 1, 1, 1, 1];
    const runs = 400;
    const worlds = Array.from({ length: runs }, () => {
      const [x, z] = [blocks.map(() => uniform()), blocks.map(() => uniform())];
      return { x, z, y: z.map((v) => v / 2 + normal() / 10) };
    });
    const share = (p: (world: (typeof worlds)[number]) => number) =>
      worlds.filter((world) => p(world) <= 0.05).length / runs;
    const held = share(({ x, y, z }) => heldSlope({ blocks, x, y }, [z], options).p);
    const asTheyAre = share(({ x, y, z }) => {
      const rest = (v: readonly number[]) => takeOut(v, [blocks, z]).left;
      return permutationSlope({ blocks, x: rest(x), y: rest(y) }, options).p;
    });
    // Standard error 1.1 points at 5 %.
    expect(held).toBeGreaterThan(0.02);
    expect(held).toBeLessThan(0.075);
    expect(asTheyAre).toBeGreaterThan(0.075);
  });

  it('is nearly the permutation of the units themselves when what is held explains nothing', () => {
    const x = [0, 1, 2, 3, 4, 5, 6, 7];
    const y = [1, 3, 2, 5, 4, 4, 8, 6];
    const even = [1, -1, -1, 1, 1, -1, -1, 1];
    const blocks = x.map(() => 1);
    const free = permutationSlope({ blocks, x, y }, options);
    const held = heldSlope({ blocks, x, y }, [even], options);
    expectClose(held.estimate, free.estimate);
    expect(Math.abs(held.p - free.p)).toBeLessThan(0.01);
  });

  it('samples where there are too many orders, repeatably, close to the exact answer', () => {
    const { x, y, others, blocks } = ANSWERS.two_blocks!;
    const exact = heldSlope({ blocks, x, y }, others, options);
    const once = heldSlope({ blocks, x, y }, others, { ...options, most: 100 });
    expect(once.sampled).toBe(true);
    expect(heldSlope({ blocks, x, y }, others, { ...options, most: 100 })).toEqual(once);
    expect(Math.abs(once.p - exact.p)).toBeLessThan(0.02);
  });

  it('sets no limit where too few orders are possible, and says so by its smallest p', () => {
    const found = heldSlope({ blocks: [1, 1, 1], x: [0, 1, 3], y: [2, 1, 5] }, [[1, 0, 0]], options);
    expect(found).toMatchObject({ arrangements: 6, low: null, high: null, comparisons: 1 });
    expect(found.smallestP).toBeGreaterThan(0.05);
  });

  it('refuses a factor that follows from those held', () => {
    expect(() =>
      heldSlope({ blocks: [1, 1, 2, 2], x: [0, 1, 5, 6], y: [1, 2, 3, 4] }, [[2, 4, 0, 2]], options),
    ).toThrow('something left of a factor once the others are held; found nothing');
  });
});

describe('permutedEffect', () => {
  const term = { factor: { name: 'roast', kind: 'category', base: null }, unitOfChange: 'tile' } as const;
  const lead = { term: { factor: { name: 'lead', kind: 'number', unit: '%', step: 1 } } } as const;
  const blocks = [1, 1, 1, 1, 1, 1, 1, 1];
  const x = [0, 0, 1, 1, 0, 1, 0, 1];
  const y = [1, 2, 4, 5, 2, 6, 3, 5];

  it('is exact without others, approximate with them, and says so', () => {
    const request = { units: { blocks, x, y }, term, scale: 'share' } as const;
    expect(permutedEffect({ ...request, others: [] }, options)).toMatchObject({
      method: 'exact-permutation',
      cautions: [],
    });
    const held = permutedEffect(
      { ...request, others: [{ ...lead, values: [1, 4, 2, 6, 5, 3, 8, 7] }] },
      options,
    );
    expect(held.method).toBe('approximate-permutation');
    expect(held.tooFew).toBeUndefined();
    expect(held.cautions).toEqual([
      'p is approximate: the effect of lead was taken out first, and what that leaves was permuted.',
    ]);
  });

  it('sets no limits where the outcome is alike in every block, though blocks differ', () => {
    const flat = { blocks: [1, 1, 1, 1, 2, 2, 2, 2], x, y: [0.2, 0.2, 0.2, 0.2, 0.7, 0.7, 0.7, 0.7] };
    for (const others of [[], [{ ...lead, values: [1, 4, 2, 6, 5, 3, 8, 7] }]])
      expect(permutedEffect({ units: flat, term, others, scale: 'share' }, options)).toMatchObject({
        estimate: null,
        low: null,
        high: null,
        p: 1,
        smallestP: 1,
      });
  });

  it('gives no ground for a verdict with fewer than six comparisons left', () => {
    const others = [
      { ...lead, values: [1, 4, 2, 6, 5, 3, 8, 7] },
      { term: { factor: term.factor }, values: [0, 1, 0, 0, 1, 0, 0, 0] },
    ];
    const found = permutedEffect({ units: { blocks, x, y }, term, others, scale: 'share' }, options);
    expect(found.tooFew).toBe(true);
    expect(found.cautions[1]).toBe(
      'With lead and the other levels of roast held, 5 comparisons are left between tiles; a verdict needs at least 6.',
    );
  });
});
