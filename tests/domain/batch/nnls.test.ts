import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxLeastSquares } from '../../../api/domain/batch/box-least-squares.ts';
import { nnls } from '../../../api/domain/batch/nnls.ts';

/** Answers of R 4.2.2, package nnls 1.4; the data are invented. See tests/fixtures/hsaur3/README.md. */
const models = JSON.parse(
  readFileSync(new URL('../../fixtures/hsaur3/misc_models.json', import.meta.url), 'utf8'),
);
const value = (name: string) => models[name].value;
const A: number[][] = value('nnls_endmembers_A');

function expectClose(found: readonly number[], wanted: readonly number[], relative = 1e-9) {
  expect(found).toHaveLength(wanted.length);
  wanted.forEach((w, i) => {
    expect(Math.abs(found[i]! - w), `${found[i]} against ${w}`).toBeLessThanOrEqual(
      relative * Math.max(Math.abs(w), 1e-6),
    );
  });
}

describe('non-negative least squares agrees with R nnls', () => {
  it('on an inner solution', () => {
    const fit = nnls(A, value('nnls_b1'));
    expectClose(fit.x, value('nnls_case1').x);
    expectClose(fit.fitted, value('nnls_case1').fitted);
    expectClose([fit.residual], [value('nnls_case1').residual_ss]);
  });
  it('where two unknowns are driven to zero', () => {
    const fit = nnls(A, value('nnls_b2'));
    expectClose(fit.x, value('nnls_case2_active').x);
    expectClose([fit.residual], [value('nnls_case2_active').residual_ss]);
    expect(fit.passive).toEqual([value('nnls_case2_active').passive - 1]);
  });
  it('with weights 1/σ', () => {
    const { x, weighted_ss, weights } = value('nnls_weighted_case1');
    const fit = nnls(A, value('nnls_b1'), { weights });
    expectClose(fit.x, x);
    expectClose([fit.residual], [weighted_ss]);
  });
  it.each([
    ['nnls_b1', 'nnls_sum_to_one_case1'],
    ['nnls_b2', 'nnls_sum_to_one_case2'],
  ])('with unknowns that sum to one: %s', (b, wanted) => {
    const fit = nnls(A, value(b), { sumTo: 1 });
    expectClose(fit.x, value(wanted).x, 1e-8);
    expectClose([fit.residual], [value(wanted).residual_ss], 1e-8);
  });
});

/** Three decimals, as analyses come. */
const entry = fc.integer({ min: -10_000, max: 10_000 }).map((n) => n / 1000);
const system = fc
  .record({ m: fc.integer({ min: 1, max: 8 }), n: fc.integer({ min: 1, max: 12 }) })
  .chain(({ m, n }) =>
    fc.record({
      rows: fc.array(fc.array(entry, { minLength: n, maxLength: n }), { minLength: m, maxLength: m }),
      b: fc.array(entry, { minLength: m, maxLength: m }),
    }),
  );

function slopes(rows: number[][], b: number[], x: readonly number[]): number[] {
  const gap = rows.map((row, i) => b[i]! - row.reduce((s, a, j) => s + a * x[j]!, 0));
  return x.map((_, j) => rows.reduce((s, row, i) => s + row[j]! * gap[i]!, 0));
}

describe('the conditions of Karush, Kuhn and Tucker hold', () => {
  it('for x ≥ 0: no slope is positive, and none is left where x is above zero', () => {
    fc.assert(
      fc.property(system, ({ rows, b }) => {
        const { x } = nnls(rows, b);
        const scale = 1e-6 * (1 + Math.max(...rows.flat().map(Math.abs)) ** 2 * rows.length);
        slopes(rows, b, x).forEach((slope, j) => {
          expect(x[j]).toBeGreaterThanOrEqual(0);
          expect(slope).toBeLessThanOrEqual(scale);
          if (x[j]! > 1e-6) expect(Math.abs(slope)).toBeLessThanOrEqual(scale);
        });
      }),
      { numRuns: 400 },
    );
  });
  it('whatever the units of the columns: scaled by up to 10^±6 the same fit comes out', () => {
    const powers = fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(system, powers, ({ rows, b }, exponents) => {
        const scales = exponents.map((e) => 10 ** e);
        const scaled = rows.map((row) => row.map((a, j) => a * scales[j]!));
        const [plain, found] = [nnls(rows, b), nnls(scaled, b)];
        const size = 1 + b.reduce((sum, v) => sum + v * v, 0);
        expect(Math.abs(found.residual - plain.residual)).toBeLessThanOrEqual(1e-7 * size);
        const lengths = scaled[0]!.map((_, j) => Math.hypot(...scaled.map((row) => row[j]!)) || 1);
        slopes(scaled, b, found.x).forEach((slope, j) => {
          expect(slope / lengths[j]!).toBeLessThanOrEqual(1e-6 * Math.sqrt(size));
        });
      }),
      { numRuns: 300 },
    );
  });
  it('for x ≥ 0 with a fixed sum: one multiplier bounds every slope', () => {
    fc.assert(
      fc.property(system, ({ rows, b }) => {
        const { x } = nnls(rows, b, { sumTo: 2 });
        expect(x.reduce((s, v) => s + v, 0)).toBeCloseTo(2, 9);
        const scale = 1e-6 * (1 + Math.max(...rows.flat().map(Math.abs)) ** 2 * rows.length);
        const slope = slopes(rows, b, x);
        const inUse = slope.filter((_, j) => x[j]! > 1e-6);
        expect(Math.max(...inUse) - Math.min(...inUse)).toBeLessThanOrEqual(scale);
        expect(Math.max(...slope)).toBeLessThanOrEqual(Math.max(...inUse) + scale);
      }),
      { numRuns: 400 },
    );
  });
  it('so that scaling b scales x alike', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 100, noNaN: true }), (k) => {
        const b: number[] = value('nnls_b1');
        const scaled = nnls(
          A,
          b.map((v) => v * k),
        ).x;
        expectClose(
          scaled,
          nnls(A, b).x.map((v) => v * k),
          1e-9,
        );
      }),
    );
  });
});

describe('bounds and a sum together', () => {
  const box = fc
    .record({ n: fc.integer({ min: 2, max: 10 }), m: fc.integer({ min: 2, max: 8 }) })
    .chain(({ n, m }) =>
      fc.record({
        columns: fc.array(entry, { minLength: n * m, maxLength: n * m }),
        right: fc.array(entry, { minLength: m, maxLength: m }),
        upper: fc.array(fc.integer({ min: 60, max: 100 }), { minLength: n, maxLength: n }),
      }),
    );
  it('leave no exchange between two unknowns that would still gain', () => {
    fc.assert(
      fc.property(box, ({ columns, right, upper }) => {
        const n = upper.length;
        const rows = right.map((_, i) =>
          Array.from({ length: n }, (__, k) => columns[k * right.length + i]!),
        );
        const sum = { weights: new Float64Array(n).fill(1), total: 100 };
        const problem = {
          columns: Float64Array.from(columns),
          right: Float64Array.from(right),
          lower: new Float64Array(n),
          upper: Float64Array.from(upper),
          sum,
        };
        const x = [...boxLeastSquares(problem)];
        expect(x.reduce((a, b) => a + b, 0)).toBeCloseTo(100, 7);
        const slope = slopes(rows, right, x);
        const give = Math.min(...slope.filter((_, k) => x[k]! > 1e-7));
        const take = Math.max(...slope.filter((_, k) => x[k]! < upper[k]! - 1e-7));
        const scale = 100 * Math.max(1, ...columns.map((c) => c * c)) * right.length;
        expect(take - give).toBeLessThanOrEqual(1e-8 * scale);
      }),
      { numRuns: 1500 },
    );
  });
});

describe('what cannot be solved is refused', () => {
  it('ragged rows', () => expect(() => nnls([[1, 2], [1]], [1, 2])).toThrow('all of one length'));
  it('numbers that are none', () => expect(() => nnls([[Number.NaN]], [1])).toThrow('finite numbers'));
  it('a weight of zero', () =>
    expect(() => nnls([[1]], [1], { weights: [0] })).toThrow('one positive weight'));
});
