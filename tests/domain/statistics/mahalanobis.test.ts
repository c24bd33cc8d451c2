import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cholesky, invertTriangle } from '../../../api/domain/statistics/cholesky.ts';
import { covariance } from '../../../api/domain/statistics/covariance.ts';
import {
  leaveOneOutD2,
  mahalanobis,
  mahalanobisGradient,
  sampleSpread,
} from '../../../api/domain/statistics/mahalanobis.ts';
import { pca, project } from '../../../api/domain/statistics/pca.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { expectClose } from '../../support/close.ts';
import { clrRows, GROUPS, ILR, R_SAYS, RAW, rowsOf, times } from '../../support/romano-british.ts';

const clr = clrRows(RAW);
const components = pca(clr);
const pc3 = clr.map((row) => project(row, components).slice(0, 3));

describe('distances of the 45 sherds are those of R', () => {
  const cases = GROUPS.flatMap((group) => [
    ['Helmert log-ratios', 'mahalanobis_ilr', group, ILR] as const,
    ['three components', 'mahalanobis_pc3', group, pc3] as const,
  ]);

  it.each(cases)('in %s (%s), group %s', (_, entry, group, all) => {
    const wanted = R_SAYS[entry].value[group];
    const spread = sampleSpread(rowsOf(group).map((i) => all[i]!));
    expectClose(spread.mean, wanted.mean, { floor: 1e-2 });
    expectClose(
      all.map((x) => mahalanobis(x, spread)),
      wanted.D2_all_rows,
    );
  });

  it.each(cases)(
    'leaves each member out in %s (%s), group %s, by the closed form',
    (_, entry, group, all) => {
      const wanted = R_SAYS[entry].value[group];
      const members = rowsOf(group).map((i) => all[i]!);
      const spread = sampleSpread(members);
      const size = { n: members.length, p: members[0]!.length };
      const found = members.map((x) => leaveOneOutD2(mahalanobis(x, spread), size));
      expectClose(found, wanted.loo_D2_members);
    },
  );
});

/** NIST/SEMATECH e-Handbook 6.5.4.1; distances computed from its mean and covariance (shared sources, §3). */
const HANDBOOK = [
  [4.0, 2.0, 0.6],
  [4.2, 2.1, 0.59],
  [3.9, 2.0, 0.58],
  [4.3, 2.1, 0.62],
  [4.1, 2.2, 0.63],
];

describe('distances are those that follow from the NIST/SEMATECH e-Handbook 6.5.4.1', () => {
  it('gives the in-sample distances, which sum to (n − 1)p, and the distance of a new row', () => {
    const spread = sampleSpread(HANDBOOK);
    const found = HANDBOOK.map((x) => mahalanobis(x, spread));
    expectClose(found, [1.75769, 2.68077, 1.94359, 2.42436, 3.19359], { relative: 3e-6 });
    expectClose(
      found.reduce((a, b) => a + b, 0),
      12,
    );
    expectClose(mahalanobis([4.5, 2, 0.6], spread), 14.8667, { relative: 3e-6 });
  });
});

/** Rows of a correlated normal sample: the seed makes them, so a failure can be made again. */
const sample = fc
  .record({
    seed: fc.integer({ min: 0, max: 1e6 }),
    p: fc.integer({ min: 1, max: 5 }),
    spare: fc.integer({ min: 2, max: 9 }),
  })
  .map(({ seed, p, spare }) => {
    const random = randomStream(seed);
    const mix = Array.from({ length: p }, () => Array.from({ length: p }, () => random.normal()));
    const draw = () => times([Array.from({ length: p }, () => random.normal())], mix)[0]!;
    return { p, n: p + spare, rows: Array.from({ length: p + spare }, draw), outsider: draw(), random };
  });

describe('the squared distance', () => {
  it('does not depend on the axes: any affine map of group and newcomer leaves it', () => {
    fc.assert(
      fc.property(sample, ({ p, rows, outsider, random }) => {
        const map = Array.from({ length: p }, (_, i) =>
          Array.from({ length: p }, (_, j) => (i === j ? 3 : 0) + 0.5 * random.uniform()),
        );
        const moved = (x: readonly number[]) => times([x], map)[0]!.map((v) => v + 7);
        const before = mahalanobis(outsider, sampleSpread(rows));
        const after = mahalanobis(moved(outsider), sampleSpread(rows.map(moved)));
        expectClose(after, before, { relative: 1e-6 });
      }),
    );
  });

  it('left out by the closed form equals a refit on the others', () => {
    fc.assert(
      fc.property(sample, ({ n, p, rows }) => {
        const spread = sampleSpread(rows);
        rows.forEach((x, i) => {
          const refit = mahalanobis(x, sampleSpread(rows.filter((_, k) => k !== i)));
          expectClose(leaveOneOutD2(mahalanobis(x, spread), { n, p }), refit, { relative: 1e-6 });
        });
      }),
    );
  });

  it('is the product of the gradient with the difference', () => {
    fc.assert(
      fc.property(sample, ({ rows, outsider }) => {
        const spread = sampleSpread(rows);
        const shares = mahalanobisGradient(outsider, spread).map(
          (g, j) => g * (outsider[j]! - spread.mean[j]!),
        );
        expectClose(
          shares.reduce((a, b) => a + b, 0),
          mahalanobis(outsider, spread),
          { relative: 1e-8 },
        );
      }),
    );
  });
});

describe('the Cholesky factor', () => {
  it('multiplies back to the matrix, and its inverse undoes it', () => {
    fc.assert(
      fc.property(sample, ({ p, rows }) => {
        const matrix = covariance(rows);
        const full = (packed: ArrayLike<number>) =>
          Array.from({ length: p }, (_, i) =>
            Array.from({ length: p }, (_, j) => (j <= i ? packed[(i * (i + 1)) / 2 + j]! : 0)),
          );
        const l = cholesky(matrix);
        const transposed = full(l)[0]!.map((_, j) => full(l).map((row) => row[j]!));
        expectClose(times(full(l), transposed), matrix, { floor: 1 });
        const identity = full(l).map((_, i) => full(l).map((_, j) => (i === j ? 1 : 0)));
        expectClose(times(full(l), full(invertTriangle(l))), identity, { floor: 1, relative: 1e-8 });
      }),
    );
  });
});

describe('what has no spread is refused', () => {
  it.each([
    [
      () =>
        cholesky([
          [1, 2],
          [2, 4],
        ]),
      'positive definite matrix; column 2 follows',
    ],
    [() => cholesky([[0]]), 'column 1 follows'],
    [
      () =>
        sampleSpread([
          [1, 2],
          [2, 1],
        ]),
      'a sample covariance needs n − 1 ≥ p; found n = 2, p = 2',
    ],
    [
      () =>
        sampleSpread([
          [1, 2],
          [2, 4],
          [3, 6],
          [4, 8],
        ]),
      'positive definite',
    ],
    [() => leaveOneOutD2(1, { n: 9, p: 8 }), 'needs n − 2 ≥ p; found n = 9, p = 8'],
  ])('%s', (ask, message) => {
    expect(ask).toThrow(message);
  });
});

describe('one sherd unlike all the others, which are the same', () => {
  it.each([0.55, 0.5, 0.3, 0.599])(
    'is left out to a huge and finite distance, further than any (lead %f)',
    (lead) => {
      const rows = [...Array.from({ length: 7 }, () => 0.6), lead].map((x) => [Math.log(x / (1 - x))]);
      const spread = sampleSpread(rows);
      const found = rows.map((x) => leaveOneOutD2(mahalanobis(x, spread), { n: 8, p: 1 }));
      expect(found[7]).toBeGreaterThan(1e9);
      expect(Number.isFinite(found[7])).toBe(true);
      expect(Math.max(...found.slice(0, 7))).toBeLessThan(1);
      expect(Math.min(...found)).toBeGreaterThanOrEqual(0);
    },
  );
});
