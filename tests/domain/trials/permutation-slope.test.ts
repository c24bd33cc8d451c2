import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distinctOrders, orderCount, shuffled } from '../../../api/domain/trials/orders.ts';
import { type BlockedUnits, permutationSlope } from '../../../api/domain/trials/permutation-slope.ts';
import { expectClose } from '../../support/close.ts';
import { MISC } from '../../support/romano-british.ts';
import { TRIAL_ANSWERS } from '../../support/trial-answers.ts';

const options = { level: 0.95, seed: 3 };
const unitsOf = (rows: readonly (readonly [number, number, number])[]): BlockedUnits => ({
  blocks: rows.map((r) => r[0]),
  x: rows.map((r) => r[1]),
  y: rows.map((r) => r[2]),
});

describe('permutationSlope gives what R counts (misc_models.json)', () => {
  it('two samples of five: 252 arrangements, 12 as extreme', () => {
    const { a, b, observed_mean_diff, n_arrangements, p_two_sided } = MISC.perm_two_sample.value;
    const rows = [...a.map((y: number) => [1, 1, y]), ...b.map((y: number) => [1, 0, y])];
    const found = permutationSlope(unitsOf(rows), options);
    expectClose(
      [found.estimate, found.arrangements, found.p],
      [observed_mean_diff, n_arrangements, p_two_sided],
    );
  });

  it('signs of seven paired differences: 128 arrangements, 4 as extreme', () => {
    const r = MISC.perm_paired_signflip.value;
    const rows = r.diff.flatMap((d: number, i: number) => [
      [i, 0, 0],
      [i, 1, d],
    ]);
    const found = permutationSlope(unitsOf(rows), options);
    expectClose([found.estimate, found.arrangements, found.p], [r.observed, r.n_arrangements, r.p_two_sided]);
  });

  it('two and two tiles in each of three firings: 216 arrangements, 4 as extreme', () => {
    const r = MISC.perm_within_blocks.value;
    const rows = r.blocks.flatMap(({ a, b }: { a: number[]; b: number[] }, i: number) => [
      ...a.map((y) => [i, 1, y]),
      ...b.map((y) => [i, 0, y]),
    ]);
    const found = permutationSlope(unitsOf(rows), options);
    expectClose(3 * found.estimate, r.observed_sum_of_block_mean_diffs);
    expectClose([found.arrangements, found.p], [r.n_arrangements, r.p_two_sided]);
  });

  it('two unequal samples: twice the smaller of coin’s exact tails', () => {
    const { x, y, p_less, p_greater } = TRIAL_ANSWERS.coin_two_sample.value;
    const found = permutationSlope(unitsOf(x.map((v: number, i: number) => [1, v, y[i]])), options);
    expectClose(found.p, Math.min(1, 2 * Math.min(p_less, p_greater)));
  });
});

const units = fc
  .array(
    fc.record({
      block: fc.integer({ min: 0, max: 2 }),
      x: fc.integer({ min: 0, max: 2 }),
      y: fc.integer({ min: -50, max: 50 }),
    }),
    {
      minLength: 4,
      maxLength: 10,
    },
  )
  .map((rows) => unitsOf(rows.map(({ block, x, y }) => [block, x, y] as const)))
  .filter(({ blocks, x }) => blocks.some((b, i) => blocks.some((c, j) => b === c && x[i] !== x[j])));

describe('permutationSlope', () => {
  it('has as limits exactly the slopes that its own test does not refuse', () => {
    fc.assert(
      fc.property(units, fc.double({ min: 1e-3, max: 5, noNaN: true }), (u, away) => {
        const level = 0.8;
        const { low, high } = permutationSlope(u, { level, seed: 1 });
        const pAt = (slope: number) =>
          permutationSlope({ ...u, y: u.y.map((y, i) => y - slope * u.x[i]!) }, { level, seed: 1 }).p;
        if (low !== null) {
          expect(pAt(low)).toBeGreaterThan(1 - level);
          expect(pAt(low - away)).toBeLessThanOrEqual(1 - level + 1e-9);
        }
        if (high !== null) {
          expect(pAt(high)).toBeGreaterThan(1 - level);
          expect(pAt(high + away)).toBeLessThanOrEqual(1 - level + 1e-9);
        }
        if (low === null && high === null) expect(pAt(1e6)).toBeGreaterThan(1 - level);
      }),
      { numRuns: 60 },
    );
  });

  it('moves with y and turns with x', () => {
    fc.assert(
      fc.property(units, fc.double({ min: -9, max: 9, noNaN: true }), (u, slope) => {
        const plain = permutationSlope(u, options);
        const moved = permutationSlope({ ...u, y: u.y.map((y, i) => y + slope * u.x[i]!) }, options);
        expectClose(moved.estimate, plain.estimate + slope, { relative: 1e-7, floor: 1 });
        const turned = permutationSlope({ ...u, x: u.x.map((x) => -x) }, options);
        expectClose([turned.estimate, turned.p], [-plain.estimate, plain.p], { relative: 1e-7, floor: 1 });
        expectClose(turned.high ?? 0, -(plain.low ?? 0), { relative: 1e-7, floor: 1 });
      }),
      { numRuns: 60 },
    );
  });

  it('can never call four tiles, two and two: 6 arrangements leave p at 1/3', () => {
    const found = permutationSlope(
      unitsOf([
        [1, 0, 0],
        [1, 0, 0],
        [1, 1, 9],
        [1, 1, 9],
      ]),
      options,
    );
    expect(found).toMatchObject({ arrangements: 6, low: null, high: null });
    expectClose([found.p, found.smallestP], [1 / 3, 1 / 3]);
  });

  it('samples where there are too many orders, repeatably, close to the exact answer', () => {
    const rows = Array.from({ length: 10 }, (_, i) => [1, i % 2, ((i * 7) % 10) + 2 * (i % 2)] as const);
    const exact = permutationSlope(unitsOf(rows), options);
    const once = permutationSlope(unitsOf(rows), { ...options, most: 100 });
    expect(once.sampled).toBe(true);
    expect(permutationSlope(unitsOf(rows), { ...options, most: 100 })).toEqual(once);
    expect(Math.abs(once.p - exact.p)).toBeLessThan(0.02);
    expect(Math.abs(once.low! - exact.low!)).toBeLessThan(0.5);
  });

  it('refuses a factor that never differs within a block', () => {
    expect(() =>
      permutationSlope(
        unitsOf([
          [1, 0, 1],
          [2, 1, 3],
        ]),
        options,
      ),
    ).toThrow('two different settings in one block; found none');
  });
});

describe('orders', () => {
  it('lists as many distinct orders as it counts', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 6 }), (values) => {
        const orders = distinctOrders(values);
        expect(new Set(orders.map(String)).size).toBe(orderCount(values));
        expect(orders.every((o) => String(o.toSorted()) === String(values.toSorted()))).toBe(true);
      }),
    );
  });

  it('shuffles without losing any', () => {
    fc.assert(
      fc.property(fc.array(fc.integer()), fc.double({ min: 0, max: 0.999, noNaN: true }), (values, u) => {
        expect(shuffled(values, () => u).toSorted()).toEqual(values.toSorted());
      }),
    );
  });
});
