import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitUptake } from '../../../api/domain/slip/uptake.ts';
import { fractionFromThickness } from '../../../api/domain/slip/uptake-apply.ts';
import { UPTAKE_LAWS, type UptakeLaw } from '../../../api/domain/slip/uptake-law.ts';
import r from '../../fixtures/slip/r-slip.json' with { type: 'json' };

const LAWS = ['dissolved layer', 'seen through'] as const;
const tile = (thickness: number, f: number, sigma = 0.01, thicknessSigma = 0) => ({
  label: `tile of ${thickness} µm`,
  thickness,
  thicknessSigma,
  f,
  sigma,
});
const along = (law: UptakeLaw, depth: number, thicknesses: readonly number[]) =>
  thicknesses.map((t) => tile(t, UPTAKE_LAWS[law].fraction(t, depth)));

describe('uptake learnt from tiles', () => {
  const tiles = r.uptake_data.t.map((t, i) => tile(t, r.uptake_data.f[i]!, r.uptake_data.s[i]!));

  it('agrees with R’s nls (scripts/reference/slip.R)', () => {
    const found = fitUptake(tiles, 'dissolved layer');
    expect(found.scatter).toBe(0);
    expect(found.depth / r.uptake_dissolved.depth).toBeCloseTo(1, 7);
    expect(found.consistency.chiSquare / r.uptake_dissolved.chiSquare).toBeCloseTo(1, 7);
    const through = fitUptake(tiles, 'seen through');
    expect(through.consistency.chiSquare / r.uptake_through.chiSquare).toBeCloseTo(1, 5);
  });

  it('a law that does not fit shows as scatter, a wider interval and a warning', () => {
    const [fits, misfits] = [fitUptake(tiles, 'dissolved layer'), fitUptake(tiles, 'seen through')];
    expect(misfits.consistency.agree).toBe(false);
    expect(misfits.scatter).toBeGreaterThan(0.1);
    expect(misfits.logSigma).toBeGreaterThan(3 * fits.logSigma);
    expect(misfits.warnings[0]).toMatch(/scatter by a factor of/);
  });

  it.each(LAWS)('finds the depth that tiles were made with: %s', (law) => {
    fc.assert(
      fc.property(fc.double({ min: 8, max: 60, noNaN: true }), (depth) => {
        const found = fitUptake(along(law, depth, [10, 20, 35, 50]), law);
        expect(found.depth).toBeCloseTo(depth, 5);
        expect(found.low).toBeLessThan(depth);
        expect(found.high).toBeGreaterThan(depth);
      }),
      { numRuns: 30 },
    );
  });

  it.each(LAWS)('the slope of a law is its rise with ln depth: %s', (law) => {
    const { fraction, slope } = UPTAKE_LAWS[law];
    const h = 1e-5;
    const rise = (fraction(20, 15 * Math.exp(h)) - fraction(20, 15 * Math.exp(-h))) / (2 * h);
    expect(slope(20, 15)).toBeCloseTo(rise, 8);
  });

  it('an uncertain thickness widens the interval of a sherd', () => {
    const uptake = fitUptake(tiles, 'dissolved layer');
    const [sharp, vague] = [1, 10].map((sigma) => fractionFromThickness(uptake, { thickness: 30, sigma }));
    expect(vague!.high - vague!.low).toBeGreaterThan(2 * (sharp!.high - sharp!.low));
    expect(vague!.low).toBeGreaterThan(0);
    expect(vague!.high).toBeLessThan(1);
  });

  it('a thickness beyond the tiles is named as an extrapolation', () => {
    const uptake = fitUptake(tiles, 'dissolved layer');
    expect(fractionFromThickness(uptake, { thickness: 90, sigma: 5 }).warnings.join()).toMatch(
      /90 µm lies outside the tiles’ 8–60 µm/,
    );
    expect(fractionFromThickness(uptake, { thickness: 30, sigma: 5 }).warnings).toEqual([]);
  });

  it('refuses too few tiles, equal thicknesses, missing uncertainty, an unbounded depth, no thickness', () => {
    expect(() => fitUptake(tiles.slice(0, 2), 'seen through')).toThrow(/at least three tiles.*there are 2/);
    const alike = [tile(10, 0.5, 0.01, 2), tile(12, 0.5, 0.01, 2), tile(11, 0.4, 0.01, 2)];
    expect(() => fitUptake(alike, 'dissolved layer')).toThrow(/from 10 to 12 µm cannot be told apart/);
    expect(() => fitUptake([...tiles, tile(5, 0.5, 0)], 'dissolved layer')).toThrow(
      /tile of 5 µm has 5 µm and ±0/,
    );
    const none = [10, 20, 40].map((t) => tile(t, 0, 0.05));
    expect(() => fitUptake(none, 'dissolved layer')).toThrow(
      /bound its depth on both sides.*down to nothing/,
    );
    const uptake = fitUptake(tiles, 'dissolved layer');
    expect(() => fractionFromThickness(uptake, { thickness: 0, sigma: 1 })).toThrow(/above 0 µm; it is 0/);
  });
});
