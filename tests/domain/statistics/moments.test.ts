import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scatter } from '../../../api/domain/statistics/blocks.ts';
import { covariance, unpackSymmetric } from '../../../api/domain/statistics/covariance.ts';
import { columnDeviations, columnMeans, mean, quantile } from '../../../api/domain/statistics/moments.ts';
import { expectClose } from '../../support/close.ts';
import { R_SAYS, RAW } from '../../support/romano-british.ts';

/** NIST/SEMATECH e-Handbook of Statistical Methods, 6.5.4.1. */
const HANDBOOK = [
  [4.0, 2.0, 0.6],
  [4.2, 2.1, 0.59],
  [3.9, 2.0, 0.58],
  [4.3, 2.1, 0.62],
  [4.1, 2.2, 0.63],
];

const table = fc.integer({ min: 1, max: 6 }).chain((p) =>
  fc.array(fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: p, maxLength: p }), {
    minLength: 2,
    maxLength: 19,
  }),
);

describe('mean and covariance are those of the NIST/SEMATECH e-Handbook 6.5.4.1', () => {
  it('gives its mean vector and its covariance matrix', () => {
    expectClose(columnMeans(HANDBOOK), [4.1, 2.08, 0.604], { relative: 1e-12 });
    expectClose(
      covariance(HANDBOOK),
      [
        [0.025, 0.0075, 0.00175],
        [0.0075, 0.007, 0.00135],
        [0.00175, 0.00135, 0.00043],
      ],
      { relative: 1e-9, floor: 1e-4 },
    );
  });
});

describe('means and deviations are those of R', () => {
  it('gives the centre and scale of the 45 sherds', () => {
    expectClose(columnMeans(RAW), R_SAYS.prcomp_raw_correlation.value.center, { relative: 1e-12 });
    expectClose(columnDeviations(RAW), R_SAYS.prcomp_raw_correlation.value.scale, { relative: 1e-12 });
  });
});

describe('covariance by blocks of four rows is covariance', () => {
  it('equals the sum written out, for any number of rows', () => {
    fc.assert(
      fc.property(table, (rows) => {
        const means = rows[0]!.map((_, j) => mean(rows.map((r) => r[j]!)));
        const plain = means.map((_, i) =>
          means.map(
            (_, j) =>
              rows.reduce((s, r) => s + (r[i]! - means[i]!) * (r[j]! - means[j]!), 0) / (rows.length - 1),
          ),
        );
        expectClose(covariance(rows), plain, { floor: 100 });
      }),
    );
  });

  it('does not move when a constant is added, and squares a factor', () => {
    fc.assert(
      fc.property(table, fc.double({ min: -100, max: 100, noNaN: true }), (rows, shift) => {
        const moved = rows.map((row) => row.map((v) => 2 * v + shift));
        const doubled = covariance(rows).map((row) => row.map((v) => 4 * v));
        expectClose(covariance(moved), doubled, { floor: 1000 });
      }),
    );
  });

  it('unpacks what it packed', () => {
    const packed = scatter(HANDBOOK, columnMeans(HANDBOOK));
    expectClose(unpackSymmetric(packed, 4), covariance(HANDBOOK));
  });
});

describe('quantile follows R type 7', () => {
  it('gives quantile(c(1,2,3,4,10), c(0,.1,.5,.9,1)) as R does: 1, 1.4, 3, 7.6, 10', () => {
    const found = [0, 0.1, 0.5, 0.9, 1].map((q) => quantile([10, 3, 1, 4, 2], q));
    expectClose(found, [1, 1.4, 3, 7.6, 10], { relative: 1e-12 });
  });

  it('stays between the extremes and rises with q', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 1 }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (values, q) => {
          expect(quantile(values, q)).toBeGreaterThanOrEqual(Math.min(...values));
          expect(quantile(values, q + 0.1)).toBeGreaterThanOrEqual(quantile(values, q) - 1e-12);
        },
      ),
    );
  });
});

describe('tables that cannot be summed are refused by name', () => {
  it.each([
    [() => mean([]), 'mean needs at least one number'],
    [() => columnMeans([]), 'columnMeans needs at least one row'],
    [() => columnMeans([[1, 2], [3]]), 'columnMeans needs rows of 2 numbers; row 2 has 1'],
    [() => columnMeans([[1], [Number.NEGATIVE_INFINITY]]), 'row 2, column 1 holds -Infinity'],
    [() => columnDeviations([[1, 2]]), 'a standard deviation needs two rows; found 1'],
    [() => covariance([[1, 2]]), 'covariance needs at least two rows; found 1'],
    [
      () =>
        covariance([
          [1, Math.log(0)],
          [2, 3],
        ]),
      'row 1, column 2 holds -Infinity',
    ],
    [() => quantile([], 0.5), 'quantile needs at least one number'],
    [() => quantile([1], 1.1), 'quantile needs q between 0 and 1; found 1.1'],
  ])('%s', (ask, message) => {
    expect(ask).toThrow(message);
  });
});
