import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fractionFromBatch } from '../../../api/domain/slip/batch-fraction.ts';
import r from '../../fixtures/slip/r-slip.json' with { type: 'json' };
import { analysed } from './support.ts';

const byOxide = (sigmas: readonly number[]) =>
  Object.fromEntries(Object.keys(r.paint).map((oxide, j) => [oxide, sigmas[j]!]));
const paint = analysed(r.paint, byOxide(r.paintSigma));
const batch = analysed(r.batch, null, 'batch 3');
const slip = analysed(r.slip, byOxide(r.slipSigma), 'slip');

describe('slip fraction from a batch', () => {
  it('agrees with R’s lm where batch and slip are exact (scripts/reference/slip.R)', () => {
    const exact = analysed(r.slip, byOxide(r.slipSigma.map(() => 1e-9)), 'slip');
    const found = fractionFromBatch(paint, batch, { slip: exact });
    expect(found.unbounded).toBeCloseTo(r.wls.f, 6);
    expect(found.consistency!.chiSquare).toBeCloseTo(r.wls.chiSquare, 5);
  });

  it('agrees with R’s profile where paint and slip both err (scripts/reference/slip.R)', () => {
    const found = fractionFromBatch(paint, batch, { slip });
    expect(found.unbounded).toBeCloseTo(r.batch_fit.f, 6);
    expect(found.consistency!.chiSquare).toBeCloseTo(r.batch_fit.chiSquare, 5);
    expect(found.consistency!.p / r.batch_fit.p).toBeCloseTo(1, 4);
    expect(found.consistency!.agree).toBe(false);
    expect(found.warnings[0]).toMatch(/do not explain the reading/);
  });

  it('finds the fraction mixed in, whatever scale the paint was closed to', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0.5, max: 1.5, noNaN: true }),
        (f, scale) => {
          const mixture = Object.fromEntries(
            Object.entries(r.batch).map(([oxide, wt]) => [
              oxide,
              scale * ((1 - f) * wt + f * r.slip[oxide as keyof typeof r.slip]),
            ]),
          );
          expect(fractionFromBatch(analysed(mixture, 0.02), batch, { slip }).unbounded).toBeCloseTo(f, 5);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('does not mind oxides that the paint was not measured for', () => {
    const {
      Al2O3: _,
      TiO2: __,
      ...rest
    } = Object.fromEntries(
      Object.entries(r.batch).map(([oxide, wt]) => [
        oxide,
        0.7 * wt + 0.3 * r.slip[oxide as keyof typeof r.slip],
      ]),
    );
    expect(fractionFromBatch(analysed(rest, 0.01), batch, { slip }).unbounded).toBeCloseTo(0.3, 6);
  });

  it('says that f cannot be told, and by what condition, when batch and slip lie in the same direction', () => {
    const near = analysed({ PbO: 50, SiO2: 40, Al2O3: 10 }, 0.05, 'near');
    const twin = analysed({ PbO: 50.5, SiO2: 39.6, Al2O3: 9.9 }, 0.05, 'twin');
    const found = fractionFromBatch(analysed({ PbO: 50.2, SiO2: 39.8, Al2O3: 10 }, 0.05), near, {
      slip: twin,
    });
    expect(found.cannotTell).toMatch(
      /f cannot be told.*angle between batch and slip 0\.\d°, condition number \d+/,
    );
    expect(found.direction!.condition).toBeGreaterThan(30);
  });

  it('a reading that is all batch has f at nothing and an interval from 0', () => {
    const found = fractionFromBatch(analysed(r.batch, 0.03), batch, { slip });
    expect(found.f).toBeCloseTo(0, 5);
    expect(found.low).toBe(0);
  });

  it('a reading beyond the batch, away from the slip, tells no f: an interval of width nothing is never given', () => {
    const beyond = (f: number) =>
      Object.fromEntries(
        Object.entries(r.batch).map(([oxide, wt]) => [
          oxide,
          Math.max(0.02, (1 - f) * wt + f * r.slip[oxide as keyof typeof r.slip]),
        ]),
      );
    const found = fractionFromBatch(analysed(beyond(-0.04), 0.005), batch, { slip });
    expect(found.unbounded).toBeLessThan(0);
    expect(found.high).toBe(0);
    expect(found.cannotTell).toMatch(
      /beyond the paint without slip.*f = −0\.0\d\d.*angle between batch and slip/,
    );
  });

  it('against a group’s centre it warns that the fraction must not test membership', () => {
    const found = fractionFromBatch(paint, batch, { slip, target: 'group' });
    expect(found.kind).toBe('group');
    expect(found.assumptions.join(' ')).toContain('must not be used to test membership');
  });

  it('refuses fewer than three shared oxides', () => {
    const two = analysed({ PbO: 60, SiO2: 40 }, 0.01);
    expect(() => fractionFromBatch(two, batch, { slip })).toThrow(/at least three oxides; shared: PbO, SiO2/);
  });
});
