import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aitchisonDistance } from '../../../api/domain/composition/aitchison.ts';
import { closure } from '../../../api/domain/composition/closure.ts';
import { helmertBasis, ilr, ilrInverse } from '../../../api/domain/composition/ilr.ts';
import { clr } from '../../../api/domain/composition/log-ratio.ts';
import { expectClose } from '../../support/close.ts';
import { R_SAYS, RAW as sherds } from '../../support/romano-british.ts';
import { positiveParts, twoCompositions } from './arbitrary.ts';

const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, x, i) => sum + x * b[i]!, 0);

describe('ilr in the Helmert basis', () => {
  it('has the basis and the coordinates that R gives for the Romano-British sherds', () => {
    expectClose(helmertBasis(9), R_SAYS.ilr_basis_helmert.value);
    expectClose(sherds.slice(0, 5).map(ilr), R_SAYS.ilr_helmert_first5.value);
  });

  it('rests on orthonormal columns that sum to zero', () => {
    for (const D of [2, 3, 7, 25]) {
      const basis = helmertBasis(D);
      const column = (k: number) => basis.map((row) => row[k]!);
      for (let j = 0; j < D - 1; j++) {
        expect(Math.abs(column(j).reduce((a, b) => a + b))).toBeLessThan(1e-14);
        for (let k = 0; k < D - 1; k++) expect(dot(column(j), column(k))).toBeCloseTo(j === k ? 1 : 0, 13);
      }
    }
  });

  it('is clr times the basis, keeps distances, and is undone by its inverse', () => {
    fc.assert(
      fc.property(twoCompositions, ([a, b]) => {
        const basis = helmertBasis(a.length);
        const product = basis[0]!.map((_, k) =>
          dot(
            clr(a),
            basis.map((row) => row[k]!),
          ),
        );
        const z = ilr(a);
        for (const [k, value] of z.entries()) expect(value).toBeCloseTo(product[k]!, 10);
        const euclidean = Math.hypot(...z.map((value, k) => value - ilr(b)[k]!));
        expect(euclidean).toBeCloseTo(aitchisonDistance(a, b), 10);
        expectClose(ilrInverse(z), closure(a));
      }),
    );
  });

  it('moves only its last coordinate when the last part changes', () => {
    fc.assert(
      fc.property(positiveParts(3), (parts) => {
        const changed = [...parts.slice(0, -1), parts.at(-1)! * 2];
        expect(ilr(changed).slice(0, -1)).toEqual(ilr(parts).slice(0, -1));
      }),
    );
  });

  it('refuses too few parts and parts that are not positive', () => {
    expect(() => ilr([1])).toThrow('ilr needs at least 2 parts; there is 1');
    expect(() => ilr([1, 0])).toThrow('ilr needs positive parts; part 2 of 2 is 0');
    expect(() => ilrInverse([])).toThrow('at least one ilr coordinate');
    expect(() => ilrInverse([Number.NaN])).toThrow('finite log-ratios');
    expect(() => helmertBasis(1)).toThrow('at least 2 parts; there are 1');
    expect(() => helmertBasis(2.5)).toThrow('there are 2.5');
  });
});
