import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import {
  type DrawableAmount,
  drawAmount,
  drawable,
  drawStudent,
  rangeBelow,
} from '../../../api/domain/uncertainty/draw-amount.ts';

const N = 40_000;
const plain: DrawableAmount = { value: 5, sigma: 0, df: 0, step: 0, least: 0, below: 0 };
function moments(draw: () => number) {
  const all = Array.from({ length: N }, draw);
  const mean = all.reduce((a, b) => a + b, 0) / N;
  return { mean, variance: all.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (N - 1), all };
}

describe('drawing one amount', () => {
  const random = randomStream(3);

  it('a stated σ gives a normal scatter about the value', () => {
    const { mean, variance } = moments(() => drawAmount({ ...plain, sigma: 0.2 }, random));
    expect(mean).toBeCloseTo(5, 2);
    expect(variance / 0.04).toBeCloseTo(1, 1);
  });

  it('rounding is uniform over one step, with variance step²/12 (JCGM 101:2008, 6.4.2)', () => {
    const { variance, all } = moments(() => drawAmount({ ...plain, step: 0.1 }, random));
    expect(variance / (0.01 / 12)).toBeCloseTo(1, 1);
    expect(Math.max(...all)).toBeLessThanOrEqual(5.05);
    expect(Math.min(...all)).toBeGreaterThanOrEqual(4.95);
  });

  it('below detection is uniform over its range', () => {
    const { mean, variance, all } = moments(() => drawAmount({ ...plain, below: 0.3 }, random));
    expect(mean).toBeCloseTo(0.15, 2);
    expect(variance / (0.09 / 12)).toBeCloseTo(1, 1);
    expect(Math.min(...all)).toBeGreaterThanOrEqual(0);
  });

  it('below detection is drawn about the share of the limit that stands in for it, never above the limit', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), (fraction) => {
        const { least, most } = rangeBelow(fraction);
        expect((least + most) / 2).toBeCloseTo(fraction, 12);
        expect(least).toBeGreaterThanOrEqual(0);
        expect(most).toBeLessThanOrEqual(1 + 1e-12);
      }),
    );
    const context = { name: 'CuO of T', assumedRelative: null, limit: null, fraction: 0.65 };
    const amount = { value: null, limit: 0.1, sigma: null, sigmaBasis: null, resolution: null };
    const { mean, all } = moments(() => drawAmount(drawable(amount, context), random));
    expect(mean).toBeCloseTo(0.065, 3);
    expect(Math.min(...all)).toBeGreaterThanOrEqual(0.03);
    expect(Math.max(...all)).toBeLessThanOrEqual(0.1);
  });

  it('σ from n spots scatters as Student’s t with n − 1, variance df/(df − 2) (JCGM 101:2008, 6.4.9)', () => {
    const { variance } = moments(() => drawStudent(8, random));
    expect(variance / (8 / 6)).toBeCloseTo(1, 1);
  });

  it('a missing σ is assumed as a share of the value, or none; a limit set by hand goes before the reported one', () => {
    const amount = { value: 5, limit: null, sigma: null, sigmaBasis: null, resolution: null };
    const context = { name: 'MgO of T', assumedRelative: 0.04, limit: null, fraction: 0.5 };
    expect(drawable(amount, context).sigma).toBeCloseTo(0.2, 12);
    expect(drawable(amount, { ...context, assumedRelative: null }).sigma).toBe(0);
    expect(drawable({ ...amount, value: null, limit: 0.1 }, { ...context, limit: 0.2 }).below).toBe(0.2);
    expect(() => drawable({ ...amount, value: 0 }, context)).toThrow(/MgO of T has none/);
  });
});
