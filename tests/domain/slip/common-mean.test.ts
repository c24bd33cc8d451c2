import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { commonMean } from '../../../api/domain/slip/common-mean.ts';
import { consistencyOf } from '../../../api/domain/slip/consistency.ts';
import r from '../../fixtures/slip/r-slip.json' with { type: 'json' };

const ofSpots = (spots: readonly number[]) => {
  const n = spots.length;
  const value = spots.reduce((sum, x) => sum + x, 0) / n;
  return { value, variance: spots.reduce((sum, x) => sum + (x - value) ** 2, 0) / (n - 1) / n, df: n - 1 };
};

describe('a common mean', () => {
  it('is tested as by R’s oneway.test, variances found from few repeats (scripts/reference/slip.R)', () => {
    const found = commonMean(Object.values(r.welch_data).map(ofSpots));
    expect(found.chiSquare / 3).toBeCloseTo(r.welch.F, 9);
    expect(found.df).toBeCloseTo(r.welch.df, 9);
    expect(consistencyOf(found.chiSquare, 3, found.df).p).toBeCloseTo(r.welch.p, 9);
  });

  it('of known variances is the weighted mean with the plain χ², and lies among the values', () => {
    const one = fc.record({
      value: fc.double({ min: -5, max: 5, noNaN: true }),
      variance: fc.double({ min: 0.01, max: 4, noNaN: true }),
      df: fc.constant(null),
    });
    fc.assert(
      fc.property(fc.array(one, { minLength: 2, maxLength: 6 }), (values) => {
        const { mean, variance, df, chiSquare } = commonMean(values);
        const total = values.reduce((sum, v) => sum + 1 / v.variance, 0);
        expect(df).toBeNull();
        expect(variance).toBeCloseTo(1 / total, 12);
        const left = values.reduce((sum, v) => sum + (v.value - mean) ** 2 / v.variance, 0);
        expect(chiSquare).toBeCloseTo(left, 9);
        expect(mean).toBeGreaterThanOrEqual(Math.min(...values.map((v) => v.value)) - 1e-9);
        expect(mean).toBeLessThanOrEqual(Math.max(...values.map((v) => v.value)) + 1e-9);
      }),
    );
  });

  it('of two equal values leaves nothing over, however few the repeats', () => {
    const one = { value: 1, variance: 0.2, df: 1 };
    expect(commonMean([one, one])).toMatchObject({ mean: 1, chiSquare: 0 });
  });
});
