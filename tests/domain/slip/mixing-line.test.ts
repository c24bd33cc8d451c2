import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitMixingLine } from '../../../api/domain/slip/mixing-line.ts';
import york from '../../fixtures/slip/pearson-york.json' with { type: 'json' };
import r from '../../fixtures/slip/r-slip.json' with { type: 'json' };

const diagonal = (weights: readonly number[]) =>
  weights.map((w, i) => weights.map((_, j) => (i === j ? w : 0)));
const even = (values: readonly number[]) => ({ values, precision: diagonal(values.map(() => 1)) });
const close = (found: readonly number[], wanted: readonly number[], digits: number) =>
  wanted.forEach((w, i) => {
    expect(found[i]).toBeCloseTo(w, digits);
  });

describe('mixing line with errors on both sides', () => {
  it('gives the published line through Pearson’s data with York’s weights', () => {
    const all = york.x.map((x, i) => ({
      values: [x, york.y[i]!],
      precision: diagonal([york.wx[i]!, york.wy[i]!]),
    }));
    const line = fitMixingLine({ points: all.slice(1), ends: all.slice(0, 1), known: [null, 0] });
    const slope = line.far[1]! / (line.far[0]! - line.near[0]!);
    expect(slope).toBeCloseTo(york.slope, 9);
    expect(-slope * line.near[0]!).toBeCloseTo(york.intercept, 8);
    expect(line.chiSquare / line.df).toBeCloseTo(york.reducedS, 7);
  });

  it('with equal errors is total least squares: the first principal component of R’s prcomp', () => {
    const points = r.tls_points.map(even);
    const line = fitMixingLine({
      points: points.slice(0, 4),
      ends: points.slice(4),
      known: [null, null, null, 0],
    });
    close(line.fractions, r.tls.fractions, 8);
    close(line.near, r.tls.near, 7);
    close(line.far, r.tls.far, 7);
    expect(line.chiSquare).toBeCloseTo(r.tls.chiSquare, 8);
  });

  it('agrees with R’s optim on unequal errors, two slips and their standard uncertainties', () => {
    const all = r.line_points.map((values, i) => ({
      values,
      precision: diagonal(r.line_sigmas[i]!.map((s) => 1 / s ** 2)),
    }));
    const line = fitMixingLine({ points: all.slice(0, 4), ends: all.slice(4), known: [null, null, null, 0] });
    expect(line.chiSquare).toBeCloseTo(r.line.chiSquare, 7);
    close(line.fractions, r.line.fractions, 6);
    close(line.near, r.line.near, 4);
    // The curvature in R comes from the full second derivative, here from first ones only.
    line.fractionSigma.forEach((sigma, i) => {
      expect(sigma / r.line.fractionSigma[i]!).toBeCloseTo(1, 1);
    });
  });

  it('recovers fractions and both ends from points on a line, whatever their weights', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 18 }), { minLength: 3, maxLength: 6 }),
        fc.array(fc.double({ min: 0.1, max: 10, noNaN: true }), { minLength: 3, maxLength: 3 }),
        (twentieths, weights) => {
          const at = (f: number) => ({
            values: [70 - 69 * f, 30 + 48 * f, 21 * f],
            precision: diagonal(weights),
          });
          const fractions = twentieths.map((k) => k / 20);
          const line = fitMixingLine({ points: fractions.map(at), ends: [at(1)], known: [null, null, 0] });
          close(line.fractions, fractions, 8);
          close(line.near, [70, 30, 0], 7);
          expect(line.chiSquare).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('refuses a line without anchor, with one paint, and with ends that coincide', () => {
    const points = [even([1, 2]), even([2, 3])];
    expect(() => fitMixingLine({ points, ends: [even([3, 4])], known: [null, null] })).toThrow(
      /none is given/,
    );
    expect(() => fitMixingLine({ points: points.slice(1), ends: points, known: [0, null] })).toThrow(
      /there are 1 and 2/,
    );
    const flat = [even([0, 5]), even([0, 5])];
    expect(() => fitMixingLine({ points: flat, ends: flat, known: [0, 5] })).toThrow(
      /lie in the same direction/,
    );
  });
});
