import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cholesky, invertTriangle } from '../../../api/domain/statistics/cholesky.ts';
import { covariance } from '../../../api/domain/statistics/covariance.ts';
import { mahalanobis } from '../../../api/domain/statistics/mahalanobis.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { ledoitWolf, oas } from '../../../api/domain/statistics/shrinkage.ts';
import { expectClose } from '../../support/close.ts';
import { GROUPS, ILR, rowsOf, SHRINKAGE } from '../../support/romano-british.ts';

const METHODS = [
  ['ledoit_wolf', ledoitWolf],
  ['oas', oas],
] as const;
const groups: [string, number[]][] = [
  ['ALL', ILR.map((_, i) => i)],
  ...GROUPS.map((g): [string, number[]] => [g, rowsOf(g)]),
  ['kiln4_n5', rowsOf('G3_kilns45').slice(0, 5)],
];
const cases = groups.flatMap(([group, rows]) =>
  METHODS.map(([name, shrink]) => ({ group, rows, name, shrink })),
);

describe('shrunk covariances are those of scikit-learn 1.2.1', () => {
  it.each(cases)('$name of $group', ({ group, rows, name, shrink }) => {
    const wanted = SHRINKAGE[group][name];
    const found = shrink(rows.map((i) => ILR[i]!));
    expectClose(found.shrinkage, wanted.shrinkage);
    expectClose(found.covariance, wanted.covariance, { floor: 1e-5 });
    const spread = { mean: found.mean, inverseCholesky: invertTriangle(cholesky(found.covariance)) };
    expectClose(
      ILR.map((x) => mahalanobis(x, spread)),
      wanted.D2_all_rows,
    );
  });
});

describe('the simplified form of OAS', () => {
  it.each(groups)(
    'differs little from equation 23 of Chen et al. 2010, which keeps the terms in 2/p (%s)',
    (_, of) => {
      const sample = of.map((i) => ILR[i]!);
      const [n, p] = [sample.length, ILR[0]!.length];
      const s = covariance(sample).map((row) => row.map((v) => (v * (n - 1)) / n));
      const squares = s.reduce((sum, row) => sum + row.reduce((t, v) => t + v * v, 0), 0);
      const square = s.reduce((sum, row, i) => sum + row[i]!, 0) ** 2;
      const asPublished = Math.min(
        ((1 - 2 / p) * squares + square) / ((n + 1 - 2 / p) * (squares - square / p)),
        1,
      );
      expect(Math.abs(oas(sample).shrinkage - asPublished)).toBeLessThan(0.03);
      expect(oas(sample).shrinkage).not.toBeCloseTo(asPublished, 6);
    },
  );
});

const rows = fc
  .record({
    seed: fc.integer({ min: 0, max: 1e6 }),
    p: fc.integer({ min: 2, max: 6 }),
    n: fc.integer({ min: 4, max: 12 }),
  })
  .map(({ seed, p, n }) => {
    const random = randomStream(seed);
    return Array.from({ length: n }, () => Array.from({ length: p }, (_, j) => (j + 1) * random.normal()));
  });
const trace = (matrix: number[][]) => matrix.reduce((sum, row, i) => sum + row[i]!, 0);

describe.each(METHODS)('%s', (_, shrink) => {
  it('keeps the trace of the empirical covariance, has an intensity from 0 to 1 and can be inverted', () => {
    fc.assert(
      fc.property(rows, (sample) => {
        const found = shrink(sample);
        const n = sample.length;
        expectClose(trace(found.covariance), (trace(covariance(sample)) * (n - 1)) / n);
        expect(found.shrinkage).toBeGreaterThan(0);
        expect(found.shrinkage).toBeLessThanOrEqual(1);
        expect(cholesky(found.covariance).every(Number.isFinite)).toBe(true);
      }),
    );
  });

  it('shrinks less as the sample grows', () => {
    const random = randomStream(5);
    const draw = (n: number) => Array.from({ length: n }, () => [random.normal(), 3 * random.normal()]);
    expect(shrink(draw(4000)).shrinkage).toBeLessThan(shrink(draw(12)).shrinkage / 10);
  });

  it('is refused below four rows, where the matrix would be singular without a word', () => {
    expect(() => shrink(ILR.slice(0, 2))).toThrow('shrinkage needs at least 4 rows; found 2');
    expect(() => shrink(ILR.slice(0, 3))).toThrow('shrinkage needs at least 4 rows; found 3');
    expect(() =>
      shrink([
        [1, 2],
        [1, 2],
        [1, 2],
        [1, 2],
      ]),
    ).toThrow('needs something that varies');
  });
});
