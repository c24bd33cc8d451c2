import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fireBatch } from '../../../api/domain/batch/batch.ts';
import { blendSeries, mixBatches } from '../../../api/domain/batch/blend.ts';
import { fireAt } from '../../../api/domain/batch/fire.ts';
import { starterShelf } from '../../../api/domain/batch/shelf.ts';
import type { BatchLine } from '../../../api/domain/batch/types.ts';

const shelf = starterShelf();
const line = (id: string, amount: number, water = 0): BatchLine => ({
  material: shelf.find((m) => m.id === id)!,
  amount,
  water,
});
const ENDS = [
  [line('cerussite', 70), line('quartz', 30)],
  [line('litharge', 50), line('quartz', 20), line('kaolinite', 30, 25)],
  [line('minium', 5), line('pyrolusite', 5)],
  [line('red-clay', 200)],
];
const dry = (lines: readonly BatchLine[]) =>
  lines.reduce((sum, l) => sum + l.amount * (1 - (l.water ?? 0) / 100), 0);

describe.each([
  [2, (s: number) => s + 1],
  [3, (s: number) => ((s + 1) * (s + 2)) / 2],
  [4, (s: number) => (s + 1) ** 2],
])('a blend of %i batches', (ends, count) => {
  const batches = ENDS.slice(0, ends);
  it('has as many places as its shape, each once, shares summing to one and grams to the same dry mass', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 500 }), (steps, grams) => {
        const series = blendSeries(batches, { steps, grams });
        expect(series).toHaveLength(count(steps));
        expect(new Set(series.map((p) => p.label)).size).toBe(series.length);
        for (const point of series) {
          expect(point.shares).toHaveLength(ends);
          expect(point.shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
          expect(Math.min(...point.shares)).toBeGreaterThanOrEqual(0);
          expect(dry(point.lines)).toBeCloseTo(grams, 8);
        }
      }),
      { numRuns: 40 },
    );
  });
  it('holds each end batch unmixed', () => {
    const series = blendSeries(batches, { steps: 3, grams: 10 });
    batches.forEach((batch, i) => {
      const corner = series.find((p) => Math.abs(p.shares[i]! - 1) < 1e-12)!;
      expect(corner.lines.map((l) => l.material.id)).toEqual(batch.map((l) => l.material.id));
    });
  });
});

describe('a mixture of batches', () => {
  it('fires to the sum of what its parts fire to', () => {
    const fire = fireAt({ celsius: 850 });
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.99, noNaN: true }), (share) => {
        const [a, b] = [ENDS[0]!, ENDS[1]!];
        const mixed = fireBatch(mixBatches([a, b], [share, 1 - share], 100), fire).totals.oxides;
        const parts = [a, b].map((lines) => fireBatch(lines, fire).totals);
        for (const [oxide, grams] of Object.entries(mixed)) {
          const wanted =
            (100 * share * (parts[0]!.oxides[oxide] ?? 0)) / parts[0]!.dry +
            (100 * (1 - share) * (parts[1]!.oxides[oxide] ?? 0)) / parts[1]!.dry;
          expect(grams).toBeCloseTo(wanted, 8);
        }
      }),
    );
  });
  it('runs one material of two batches together', () => {
    const lines = mixBatches([ENDS[0]!, ENDS[1]!], [0.5, 0.5], 100);
    expect(lines.filter((l) => l.material.id === 'quartz')).toHaveLength(1);
  });
  it.each([
    [() => mixBatches(ENDS.slice(0, 2), [0.5, 0.6], 10), 'sum to 1'],
    [() => mixBatches(ENDS.slice(0, 2), [-0.5, 1.5], 10), 'zero or more'],
    [() => mixBatches([[], ENDS[0]!], [0.5, 0.5], 10), 'one is empty'],
    [() => blendSeries(ENDS.slice(0, 1), { steps: 2, grams: 5 }), 'two, three or four'],
    [() => blendSeries([...ENDS, ENDS[0]!], { steps: 2, grams: 5 }), 'found 5'],
    [() => blendSeries(ENDS.slice(0, 2), { steps: 0, grams: 5 }), '1 to 50 whole steps'],
    [() => blendSeries(ENDS.slice(0, 2), { steps: 2, grams: 0 }), 'grams above zero'],
  ])('is refused where it cannot be: %#', (make, words) => expect(make).toThrow(words));
});
