import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { projectAll, scatter } from '../../../api/domain/statistics/blocks.ts';
import { pca, project } from '../../../api/domain/statistics/pca.ts';
import { expectClose } from '../../support/close.ts';
import { clrRows, R_SAYS, RAW } from '../../support/romano-british.ts';

const number = fc.double({ min: -50, max: 50, noNaN: true });
const row = (p: number) => fc.array(number, { minLength: p, maxLength: p });
const table = fc.integer({ min: 1, max: 6 }).chain((p) =>
  fc.record({
    rows: fc.array(row(p), { maxLength: 11 }),
    means: row(p),
    loadings: fc.array(row(p), { maxLength: 4 }),
  }),
);

describe('four rows at a time give what one at a time gives', () => {
  it('in sums of products, for any number of rows and columns', () => {
    fc.assert(
      fc.property(table, ({ rows, means }) => {
        const plain = means.flatMap((a, i) =>
          means.slice(0, i + 1).map((b, j) => rows.reduce((sum, r) => sum + (r[i]! - a) * (r[j]! - b), 0)),
        );
        expectClose(Array.from(scatter(rows, means)), plain, { floor: 1e4 });
      }),
    );
  });

  it('in scores, to the last bit, so that a copy of a sherd lies at distance 0', () => {
    fc.assert(
      fc.property(table, ({ rows, means, loadings }) => {
        const plain = rows.flatMap((r) => project(r, { means, loadings }));
        expect(Array.from(projectAll(rows, { means, loadings }))).toEqual(plain);
      }),
    );
  });
});

describe('scores of many rows are those of R', () => {
  it('on the first components of the 45 sherds', () => {
    const rows = clrRows(RAW);
    const { means, loadings } = pca(rows);
    const scores = projectAll(rows.slice(0, 5), { means, loadings: loadings.slice(0, 4) });
    expectClose(Array.from(scores), R_SAYS.prcomp_clr_cov.value.scoresFirst5.flat(), { floor: 1e-3 });
  });
});

describe('tables without rows', () => {
  it('give sums of nothing and no scores', () => {
    expect(Array.from(scatter([], [1, 2]))).toEqual([0, 0, 0]);
    expect(projectAll([], { means: [1], loadings: [[1]] })).toHaveLength(0);
  });
});
