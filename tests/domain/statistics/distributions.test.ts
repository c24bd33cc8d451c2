import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  betaUpperTail,
  chiSquareQuantile,
  chiSquareUpperTail,
  fQuantile,
  fUpperTail,
  normalQuantile,
  normalUpperTail,
  tQuantile,
  tUpperTail,
} from '../../../api/domain/statistics/distributions.ts';
import { expectClose } from '../../support/close.ts';
import { MISC } from '../../support/romano-british.ts';

const r = MISC.dist_checks.value;

describe('tails and quantiles are those of R 4.2.2', () => {
  it('gives the F tails, down to 1.5e-15', () => {
    const found = r.pf_args_x_df1_df2.map(([x, d1, d2]: [number, number, number]) => fUpperTail(x, d1, d2));
    expectClose(found, r.pf, { floor: 0, relative: 1e-12 });
  });

  it('gives the F quantiles on 2 degrees of freedom', () => {
    expectClose(
      r.qf_df2.map((d: number) => fQuantile(0.95, 2, d)),
      r.qf95,
      { relative: 1e-12 },
    );
    expectClose(
      r.qf_df2.map((d: number) => fQuantile(0.9, 2, d)),
      r.qf90,
      { relative: 1e-12 },
    );
  });

  it('gives the χ² quantiles and tails, and the beta tails', () => {
    const levels = [0.9, 0.95, 0.975, 0.99];
    expectClose(
      levels.map((p) => chiSquareQuantile(p, 2)),
      r.qchisq,
      { relative: 1e-12 },
    );
    expectClose(
      levels.map((p) => chiSquareQuantile(p, 8)),
      r.qchisq8,
      { relative: 1e-12 },
    );
    const tails = [1, 20, 80].map((x) => chiSquareUpperTail(x, 8));
    expectClose(tails, r.pchisq_upper, { floor: 0, relative: 1e-12 });
    const beta = [0.1, 0.5, 0.99].map((x) => betaUpperTail(x, 4, 6));
    expectClose(beta, r.pbeta_upper, { floor: 0, relative: 1e-12 });
  });
});

describe('quantiles are those of the NIST/SEMATECH e-Handbook tables', () => {
  it('agrees with its χ² and F tables (1.3.6.7)', () => {
    const chi = [chiSquareQuantile(0.9, 2), chiSquareQuantile(0.95, 2), chiSquareQuantile(0.99, 2)];
    expectClose(
      [...chi, chiSquareQuantile(0.95, 3), chiSquareQuantile(0.95, 5)],
      [4.60517, 5.99146, 9.21034, 7.81473, 11.0705],
      {
        relative: 1e-6,
      },
    );
    expectClose(fQuantile(0.95, 2, 18), 3.55456, { relative: 1e-5 });
  });

  it('agrees with its normal and t tables (1.960; t on 9 degrees of freedom 2.262)', () => {
    expectClose([normalQuantile(0.975), tQuantile(0.975, 9)], [1.96, 2.262], { relative: 2e-4 });
  });
});

const degrees = fc.integer({ min: 1, max: 60 });
const level = fc.double({ min: 0.001, max: 0.999, noNaN: true });

describe('a tail undoes a quantile', () => {
  it('holds for every distribution here', () => {
    fc.assert(
      fc.property(level, degrees, degrees, (p, a, b) => {
        expectClose(
          [
            1 - fUpperTail(fQuantile(p, a, b), a, b),
            1 - chiSquareUpperTail(chiSquareQuantile(p, a), a),
            1 - normalUpperTail(normalQuantile(p)),
            1 - tUpperTail(tQuantile(p, a), a),
          ],
          [p, p, p, p],
          { relative: 1e-9, floor: 1 },
        );
      }),
    );
  });

  it('F is the square of t, and its tail falls as x grows', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 30, noNaN: true }), degrees, (x, d) => {
        expectClose(fUpperTail(x * x, 1, d), 2 * tUpperTail(x, d), { floor: 1e-300 });
        expect(fUpperTail(x * 1.1, 3, d)).toBeLessThan(fUpperTail(x, 3, d));
      }),
    );
  });
});

describe('the ends and impossible requests are dealt with', () => {
  it('is 1 at or below zero and 0 at infinity', () => {
    expect([
      fUpperTail(0, 2, 3),
      fUpperTail(-1, 2, 3),
      chiSquareUpperTail(0, 2),
      betaUpperTail(0, 1, 1),
    ]).toEqual([1, 1, 1, 1]);
    const infinity = Number.POSITIVE_INFINITY;
    expect([fUpperTail(infinity, 2, 3), chiSquareUpperTail(infinity, 2), betaUpperTail(1, 1, 1)]).toEqual([
      0, 0, 0,
    ]);
  });

  it.each([
    [() => fUpperTail(1, 0, 3), 'fUpperTail needs d1 > 0; found 0'],
    [() => fUpperTail(1, 3, Number.NaN), 'fUpperTail needs d2 > 0; found NaN'],
    [() => fUpperTail(Number.NaN, 3, 3), 'fUpperTail needs a number; found NaN'],
    [() => fQuantile(1, 2, 2), 'fQuantile needs a probability between 0 and 1; found 1'],
    [() => normalQuantile(-0.1), 'normalQuantile needs a probability between 0 and 1; found -0.1'],
    [() => chiSquareQuantile(0.5, -2), 'chiSquareQuantile needs df > 0; found -2'],
    [() => tQuantile(0.5, 0), 'tQuantile needs df > 0; found 0'],
    [() => betaUpperTail(0.5, 0, 1), 'betaUpperTail needs a > 0; found 0'],
  ])('%s is refused', (ask, message) => {
    expect(ask).toThrow(message);
  });
});
