import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceMatrix, hierarchicalClustering } from '../../../api/domain/statistics/hclust.ts';
import { clrRows, R_SAYS, RAW } from '../../support/romano-british.ts';

const rows = fc.tuple(fc.integer({ min: 2, max: 25 }), fc.integer({ min: 1, max: 4 })).chain(([n, p]) =>
  fc.array(fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: p, maxLength: p }), {
    minLength: n,
    maxLength: n,
  }),
);
const linkage = fc.constantFrom('ward' as const, 'average' as const);

describe('hierarchical clustering', () => {
  it.each([
    ['ward', 'hclust_ward.D2'],
    ['average', 'hclust_average'],
  ] as const)('by %s joins the Romano-British sherds as R’s hclust does, in R’s order', (how, key) => {
    const { merge, height, order } = R_SAYS[key].value;
    const { joins, order: ours } = hierarchicalClustering(distanceMatrix(clrRows(RAW)), how);
    const n = RAW.length;
    const asR = (one: number) => (one < n ? -(one + 1) : one - n + 1);
    expect(joins.map(({ pair }) => pair.map(asR))).toEqual(merge);
    joins.forEach(({ height: own }, k) => {
      expect(own).toBeCloseTo(height[k], 11);
    });
    expect(ours.map((item) => item + 1)).toEqual(order);
  });

  it('joins n items in n − 1 rising steps, each cluster once, and orders every item once', () => {
    fc.assert(
      fc.property(rows, linkage, (items, how) => {
        const { joins, order } = hierarchicalClustering(distanceMatrix(items), how);
        const n = items.length;
        expect(joins.flatMap(({ pair }) => pair).sort((a, b) => a - b)).toEqual(
          Array.from({ length: 2 * n - 2 }, (_, i) => i),
        );
        for (const [k, { pair, height }] of joins.entries()) {
          expect(Math.max(...pair)).toBeLessThan(n + k);
          if (k > 0) expect(height).toBeGreaterThanOrEqual(joins[k - 1]!.height - 1e-9);
        }
        expect([...order].sort((a, b) => a - b)).toEqual(items.map((_, i) => i));
      }),
    );
  });

  it('by ward has heights whose squares sum to twice the total sum of squares', () => {
    fc.assert(
      fc.property(rows, (items) => {
        const { joins } = hierarchicalClustering(distanceMatrix(items), 'ward');
        const mean = items[0]!.map((_, k) => items.reduce((sum, row) => sum + row[k]!, 0) / items.length);
        const total = items.reduce(
          (sum, row) => sum + row.reduce((part, x, k) => part + (x - mean[k]!) ** 2, 0),
          0,
        );
        const squares = joins.reduce((sum, { height }) => sum + height ** 2, 0);
        expect(Math.abs(squares - 2 * total)).toBeLessThanOrEqual(1e-8 * (1 + total));
      }),
    );
  });

  it('takes items that coincide', () => {
    const { joins } = hierarchicalClustering(distanceMatrix([[1], [1], [1], [5]]), 'ward');
    expect(joins.map(({ height }) => height > 1e-9)).toEqual([false, false, true]);
  });
  it('refuses what are no distances of items', () => {
    expect(() => hierarchicalClustering([0, 1, 1], 'ward')).toThrow('n × n distances of at least 2 items');
    expect(() => distanceMatrix([])).toThrow('at least 2 rows; found 0');
    const many = Array.from({ length: 2_001 }, () => [0]);
    expect(() => distanceMatrix(many)).toThrow('at most 2000 rows; found 2001');
  });
});
