import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closure } from '../../../api/domain/composition/closure.ts';
import { coordinatesOf, fitScale, freeAxes, scaled, unscale } from '../../../api/domain/reference/scale.ts';
import type { Scale } from '../../../api/domain/reference/types.ts';
import { expectClose } from '../../support/close.ts';
import { R_SAYS, RAW } from '../../support/romano-british.ts';

const SCALES: readonly Scale[] = ['log-ratio', 'log10', 'standardised'];
const compositions = fc
  .integer({ min: 2, max: 7 })
  .chain((D) =>
    fc.array(fc.array(fc.double({ min: 0.1, max: 50, noNaN: true }), { minLength: D, maxLength: D }), {
      minLength: 3,
      maxLength: 8,
    }),
  )
  .map((rows) => rows.map((row) => closure(row)))
  .filter((rows) => rows[0]!.every((v, j) => Math.abs(v - rows[1]![j]!) > 1e-3));

describe.each(SCALES)('the %s scale', (scale) => {
  it('goes there and back', () => {
    fc.assert(
      fc.property(compositions, (rows) => {
        const fitted = fitScale(rows, scale);
        for (const row of rows) expectClose(unscale(scaled(row, fitted), fitted), row, { floor: 1e-3 });
      }),
    );
  });

  it('has D − 1 free directions, orthonormal', () => {
    fc.assert(
      fc.property(compositions, (rows) => {
        const axes = freeAxes(fitScale(rows, scale));
        expect(axes).toHaveLength(rows[0]!.length - 1);
        const gram = axes.map((a) => axes.map((b) => a.reduce((s, v, j) => s + v * b[j]!, 0)));
        expectClose(
          gram,
          axes.map((_, i) => axes.map((_, j) => (i === j ? 1 : 0))),
          { floor: 1 },
        );
      }),
    );
  });
});

describe('the direction that closed parts leave empty', () => {
  it('holds nothing of any difference, in log-ratios and in standardised wt%', () => {
    fc.assert(
      fc.property(compositions, fc.constantFrom<Scale>('log-ratio', 'standardised'), (rows, scale) => {
        const fitted = fitScale(rows, scale);
        const [a, b] = [scaled(rows[0]!, fitted), scaled(rows[1]!, fitted)];
        const difference = a.map((v, j) => v - b[j]!);
        const along = freeAxes(fitted).map((axis) => axis.reduce((s, v, j) => s + v * difference[j]!, 0));
        expectClose(Math.hypot(...along), Math.hypot(...difference), { floor: 1e-3 });
      }),
    );
  });
});

describe('coordinates are those of R', () => {
  it('gives the clr of the first five sherds', () => {
    const model = { settings: { scale: 'log-ratio' as const }, mean: [], sd: null };
    expectClose(
      RAW.slice(0, 5).map((row) => coordinatesOf(model, row)),
      R_SAYS.clr_first5.value,
      { floor: 1e-3 },
    );
  });
});

describe('what cannot be scaled is refused', () => {
  it.each([
    [
      () =>
        fitScale(
          [
            [50, 50],
            [50, 50],
          ],
          'standardised',
        ),
      'standardising needs every oxide to vary; part 1',
    ],
    [
      () =>
        fitScale(
          [
            [0, 100],
            [50, 50],
          ],
          'log-ratio',
        ),
      'clr needs positive parts; part 1 of 2 is 0',
    ],
    [() => scaled([0, 100], { scale: 'log10', mean: [1, 1], sd: null }), 'log10 needs positive parts'],
    [() => fitScale([], 'log10'), 'columnMeans needs at least one row'],
  ])('%#: %s', (ask, message) => {
    expect(ask).toThrow(message);
  });
});
