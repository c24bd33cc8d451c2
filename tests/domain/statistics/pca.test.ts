import fc from 'fast-check';
import { PCA } from 'ml-pca';
import { describe, expect, it } from 'vitest';
import { columnDeviations, columnMeans } from '../../../api/domain/statistics/moments.ts';
import { pca, project } from '../../../api/domain/statistics/pca.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { expectClose } from '../../support/close.ts';
import { clrRows, R_SAYS, RAW } from '../../support/romano-british.ts';

const log10Rows = RAW.map((row) => row.map(Math.log10));
const closed = RAW.map((row) => {
  const total = row.reduce((a, b) => a + b, 0);
  return row.map((v) => (100 * v) / total);
});
type Rows = readonly (readonly number[])[];
function standardised(rows: Rows, from: Rows = rows): number[][] {
  const [means, deviations] = [columnMeans(from), columnDeviations(from)];
  return rows.map((row) => row.map((v, j) => (v - means[j]!) / deviations[j]!));
}

/** R writes loadings[column][component], four components. */
const columnsOf = (loadings: readonly (readonly number[])[]) =>
  loadings[0]!.map((_, j) => loadings.slice(0, 4).map((direction) => direction[j]!));

describe("principal components of the 45 sherds are those of R's prcomp", () => {
  it.each([
    ['centred log-ratios', 'prcomp_clr_cov', clrRows(RAW), 8],
    ['log10 of the values as analysed', 'prcomp_log10_cov', log10Rows, 9],
    ['standardised values as analysed', 'prcomp_raw_correlation', standardised(RAW), 9],
    ['standardised values closed to 100', 'prcomp_closed_correlation', standardised(closed), 8],
  ])('%s', (_, entry, rows, rank) => {
    const wanted = R_SAYS[entry].value;
    const found = pca(rows);
    expect(found.eigenvalues).toHaveLength(rank);
    expectClose(found.eigenvalues, wanted.eigenvalues.slice(0, rank), { floor: 0 });
    expectClose(
      found.explained.map((v) => 100 * v),
      wanted.percentVariance.slice(0, rank),
    );
    expectClose(columnsOf(found.loadings), wanted.loadings, { floor: 1e-3 });
    const scores = rows.slice(0, 5).map((row) => project(row, found).slice(0, 4));
    expectClose(scores, wanted.scoresFirst5, { floor: 1e-3 });
  });

  it('finds the same eigenvalues in Helmert coordinates as in centred log-ratios', () => {
    expectClose(pca(clrRows(RAW)).eigenvalues, R_SAYS.prcomp_ilr_eigenvalues.value, { floor: 0 });
  });

  it('places supplementary rows on components fitted without them', () => {
    const out = new Set<number>(R_SAYS.supplementary_rows_1based.value);
    const split = (rows: Rows) => ({
      kept: rows.filter((_, i) => !out.has(i + 1)),
      held: rows.filter((_, i) => out.has(i + 1)),
    });
    const scoresOf = ({ kept, held }: { kept: Rows; held: Rows }) =>
      held.map((row) => project(row, pca(kept)).slice(0, 3));
    expectClose(scoresOf(split(clrRows(RAW))), R_SAYS.supplementary_clr_scores.value, { floor: 1e-3 });
    expectClose(scoresOf(split(log10Rows)), R_SAYS.supplementary_log10_scores.value, { floor: 1e-3 });
    const { kept, held } = split(RAW);
    const scaled = { kept: standardised(kept), held: standardised(held, kept) };
    expectClose(scoresOf(scaled), R_SAYS.supplementary_corr_scores.value, { floor: 1e-3 });
  });
});

describe('principal components agree with other published values', () => {
  it('gives the eigenvalues of the NIST/SEMATECH e-Handbook 6.5.5.2 correlation example', () => {
    const rows = [
      [7, 4, 3],
      [4, 1, 8],
      [6, 3, 5],
      [8, 6, 1],
      [8, 5, 7],
      [7, 2, 9],
      [5, 3, 3],
      [9, 5, 8],
      [7, 4, 5],
      [8, 2, 2],
    ];
    expectClose(pca(standardised(rows)).eigenvalues, [1.76877, 0.92708, 0.30415], { relative: 2e-5 });
  });
});

const table = fc.integer({ min: 2, max: 6 }).chain((p) =>
  fc.array(fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: p, maxLength: p }), {
    minLength: p + 2,
    maxLength: 20,
  }),
);
const dot = (a: readonly number[], b: readonly number[]) => a.reduce((s, v, i) => s + v * b[i]!, 0);
const varies = (rows: Rows) => columnDeviations(rows).some((d) => d > 1e-3);

describe('principal components turn the axes and nothing else', () => {
  it('has orthonormal loadings, signed by the largest, and keeps the total variance', () => {
    fc.assert(
      fc.property(table.filter(varies), (rows) => {
        const { loadings, eigenvalues, explained } = pca(rows);
        const gram = loadings.map((a) => loadings.map((b) => dot(a, b)));
        expectClose(
          gram,
          loadings.map((_, i) => loadings.map((_, j) => (i === j ? 1 : 0))),
          { floor: 1 },
        );
        for (const direction of loadings) {
          const largest = Math.max(...direction.map(Math.abs));
          const first = direction.find((v) => Math.abs(v) >= largest * (1 - 1e-9));
          expect(first).toBeGreaterThan(0);
        }
        const total = columnDeviations(rows).reduce((s, d) => s + d * d, 0);
        expectClose(
          eigenvalues.reduce((a, b) => a + b, 0),
          total,
        );
        expectClose(
          explained.reduce((a, b) => a + b, 0),
          1,
        );
      }),
    );
  });

  it('keeps distances between rows', () => {
    fc.assert(
      fc.property(table.filter(varies), (rows) => {
        const found = pca(rows);
        const [a, b] = [project(rows[0]!, found), project(rows[1]!, found)];
        const apart = (x: readonly number[], y: readonly number[]) =>
          Math.hypot(...x.map((v, i) => v - y[i]!));
        expectClose(apart(a, b), apart(rows[0]!, rows[1]!), { floor: 10, relative: 1e-6 });
      }),
    );
  });

  it("finds what ml-pca's own decomposition of the rows finds", () => {
    const random = randomStream(11);
    const rows = Array.from({ length: 200 }, () =>
      Array.from({ length: 7 }, (_, j) => (j + 1) * random.normal()),
    );
    const theirs = new PCA(rows).getEigenvalues();
    expectClose(pca(rows).eigenvalues, theirs, { relative: 1e-10 });
  });
});

describe('tables without components are refused', () => {
  it.each([
    [() => pca([[1, 2]]), 'pca needs at least two rows; found 1'],
    [
      () =>
        pca([
          [1, 2],
          [1, 2],
        ]),
      'pca needs something that varies',
    ],
    [
      () =>
        pca([
          [1, Math.log(0)],
          [1, 2],
        ]),
      'row 1, column 2 holds -Infinity',
    ],
  ])('%s', (ask, message) => {
    expect(ask).toThrow(message);
  });
});
