import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantile } from '../../../api/domain/statistics/moments.ts';
import { selectPlace } from '../../../api/domain/uncertainty/order-statistics.ts';
import { intervalOf } from '../../../api/domain/uncertainty/summary.ts';

const numbers = fc.array(
  fc.oneof(fc.double({ min: -9, max: 9, noNaN: true }), fc.integer({ min: 0, max: 3 })),
  {
    minLength: 1,
    maxLength: 60,
  },
);

describe('order statistics without sorting', () => {
  it('are those of the sorted numbers, ties and all, and split the rest around them', () => {
    fc.assert(
      fc.property(numbers, fc.nat(), (values, any) => {
        const k = any % values.length;
        const drawn = Float64Array.from(values);
        const sorted = Float64Array.from(values).sort();
        // Nothing and minus nothing are one number here, but not to toBe.
        expect(selectPlace(drawn, k) + 0).toBe(sorted[k]! + 0);
        for (let i = 0; i < k; i++) expect(drawn[i]!).toBeLessThanOrEqual(drawn[k]!);
        for (let i = k; i < drawn.length; i++) expect(drawn[i]!).toBeGreaterThanOrEqual(drawn[k]!);
      }),
    );
  });

  it('give the quantiles of R’s type 7, as statistics/moments has them', () => {
    fc.assert(
      fc.property(numbers, (values) => {
        const found = intervalOf(Float64Array.from(values));
        expect(found.low).toBeCloseTo(quantile(values, 0.025), 12);
        expect(found.median).toBeCloseTo(quantile(values, 0.5), 12);
        expect(found.high).toBeCloseTo(quantile(values, 0.975), 12);
      }),
    );
  });

  it('of one number is that number', () => {
    expect(intervalOf(Float64Array.of(4))).toEqual({ low: 4, median: 4, high: 4 });
  });
});
