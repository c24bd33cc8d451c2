import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  aitchisonDistance,
  compositionalCentre,
  totalVariance,
  variationMatrix,
} from '../../../api/domain/composition/aitchison.ts';
import { expectClose } from '../../support/close.ts';
import { HONGITE as hongite } from '../../support/hongite.ts';
import { R_SAYS, RAW as sherds } from '../../support/romano-british.ts';
import { positiveParts, scale, twoCompositions } from './arbitrary.ts';

describe('Aitchison geometry of the hongite data (Aitchison 1986, Data 1)', () => {
  it('has the published centre and total variance', () => {
    const centre = [48.941, 21.966, 9.881, 10.405, 8.806];
    for (const [part, value] of compositionalCentre(hongite).entries())
      expect(Math.abs(value - centre[part]!)).toBeLessThan(5.01e-4);
    expect(Math.abs(totalVariance(hongite) - 1.691324)).toBeLessThan(5.01e-7);
  });

  it('has the known distance of its first two rows', () => {
    expect(Math.abs(aitchisonDistance(hongite[0]!, hongite[1]!) - 0.876751)).toBeLessThan(5.01e-7);
  });
});

describe('Aitchison geometry of the Romano-British sherds', () => {
  it('agrees with R on distances and total variance', () => {
    const corner = sherds.slice(0, 6);
    expectClose(
      corner.map((a) => corner.map((b) => aitchisonDistance(a, b))),
      R_SAYS.aitchison_dist_corner6.value,
    );
    let sum = 0;
    for (let i = 0; i < sherds.length; i++)
      for (let j = 0; j < i; j++) sum += aitchisonDistance(sherds[i]!, sherds[j]!);
    expectClose(sum, R_SAYS.aitchison_dist_sum_lower_triangle.value);
    expectClose(totalVariance(sherds), R_SAYS.total_aitchison_variance.value);
  });
});

describe('Aitchison geometry keeps its invariants', () => {
  it('measures the same distance after any perturbation and scale of both compositions', () => {
    fc.assert(
      fc.property(twoCompositions, scale, ([a, b], factor) => {
        const distance = aitchisonDistance(a, b);
        const perturbed = [a, b].map((row) => row.map((x, j) => (x * factor) / (j + 1)));
        expect(aitchisonDistance(perturbed[0]!, perturbed[1]!)).toBeCloseTo(distance, 10);
        expect(aitchisonDistance(b, a)).toBeCloseTo(distance, 12);
        expect(aitchisonDistance(a, a)).toBe(0);
      }),
    );
  });

  it('has a total variance that is the sum of the variation matrix over 2D, whatever each row’s scale', () => {
    fc.assert(
      fc.property(twoCompositions, positiveParts(12, 12), scale, ([a, b], long, factor) => {
        const rows = [a, b, long.slice(0, a.length)];
        const variation = variationMatrix(rows);
        const sum = variation.flat().reduce((x, y) => x + y, 0);
        expect(sum / (2 * a.length)).toBeCloseTo(totalVariance(rows), 8);
        expect(variation.every((row, i) => row.every((v, j) => v === variation[j]![i]))).toBe(true);
        expect(totalVariance([a.map((x) => factor * x), ...rows.slice(1)])).toBeCloseTo(
          totalVariance(rows),
          8,
        );
      }),
    );
  });

  it('puts the centre of two compositions equally far from both', () => {
    fc.assert(
      fc.property(twoCompositions, ([a, b]) => {
        const centre = compositionalCentre([a, b]);
        expect(aitchisonDistance(centre, a)).toBeCloseTo(aitchisonDistance(a, b) / 2, 9);
        expect(aitchisonDistance(centre, b)).toBeCloseTo(aitchisonDistance(a, b) / 2, 9);
      }),
    );
  });

  it('refuses rows that cannot be compared', () => {
    expect(() => aitchisonDistance([1, 2], [1])).toThrow('the same parts; found 2 and 1');
    expect(() => aitchisonDistance([1, 0], [1, 1])).toThrow('part 2 of 2 is 0');
    expect(() => compositionalCentre([])).toThrow('a centre needs at least 1 rows; there are 0');
    expect(() => totalVariance([[1, 2]])).toThrow('a total variance needs at least 2 rows; there are 1');
    expect(() => variationMatrix([[1, 2], [1]])).toThrow('row 2 has 1, row 1 has 2');
    expect(() =>
      variationMatrix([
        [1, 2],
        [0, 1],
      ]),
    ).toThrow('a variation matrix needs positive parts; part 1 of 2 is 0');
  });
});
