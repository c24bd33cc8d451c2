import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fractionFromTracers } from '../../../api/domain/slip/tracers.ts';
import r from '../../fixtures/slip/r-slip.json' with { type: 'json' };
import { amount, analysed } from './support.ts';

const byOxide = (sigmas: readonly number[]) =>
  Object.fromEntries(Object.keys(r.paint).map((oxide, j) => [oxide, sigmas[j]!]));
const paint = analysed(r.paint, byOxide(r.paintSigma));
const slip = analysed(r.slip, byOxide(r.slipSigma), 'slip');

describe('slip fraction from tracers', () => {
  it('agrees with R’s generalised least squares with closure carried (scripts/reference/slip.R)', () => {
    const found = fractionFromTracers(paint, slip, ['TiO2', 'Al2O3']);
    expect(found.f).toBeCloseTo(r.tracers.f, 7);
    expect(found.low).toBeCloseTo(r.tracers.low, 7);
    expect(found.high).toBeCloseTo(r.tracers.high, 7);
    expect(found.consistency!.chiSquare).toBeCloseTo(r.tracers.chiSquare, 8);
    expect(found.consistency!.p).toBeCloseTo(r.tracers.p, 7);
  });

  it('finds the fraction that was mixed in, whatever the slip', () => {
    const wt = fc.double({ min: 1, max: 20, noNaN: true });
    fc.assert(
      fc.property(wt, wt, fc.double({ min: 0.02, max: 0.9, noNaN: true }), (alumina, iron, f) => {
        const clay = { PbO: 1e-9, Al2O3: alumina, TiO2: iron / 10, SiO2: 100 - alumina - iron / 10 };
        const mixture = {
          PbO: 60 * (1 - f),
          SiO2: 40 * (1 - f) + f * clay.SiO2,
          Al2O3: f * clay.Al2O3,
          TiO2: f * clay.TiO2,
        };
        const sigma = { PbO: 0.1, SiO2: 0.1, Al2O3: 0.05, TiO2: 0.01 };
        const found = fractionFromTracers(analysed(mixture, sigma), analysed(clay, sigma), ['Al2O3', 'TiO2']);
        expect(found.f).toBeCloseTo(f, 6);
      }),
      { numRuns: 40 },
    );
  });

  it('says when tracers disagree, names what each says, and widens the interval', () => {
    const dirty = analysed({ ...r.paint, Al2O3: 9.3, SiO2: 33.2 }, byOxide(r.paintSigma));
    const found = fractionFromTracers(dirty, slip, ['TiO2', 'Al2O3']);
    expect(found.consistency!.agree).toBe(false);
    expect(found.warnings[0]).toMatch(/TiO2 says 0\.250.*Al2O3 says 0\.435.*the smallest \(TiO2\)/);
    const alone = fractionFromTracers(dirty, slip, ['Al2O3']);
    expect(found.high - found.low).toBeGreaterThan(5 * (alone.high - alone.low));
  });

  it('a single tracer gives a ratio and says that nothing checks it', () => {
    const found = fractionFromTracers(paint, slip, ['TiO2']);
    expect(found.f).toBeCloseTo(0.25, 8);
    expect(found.consistency).toBeNull();
    expect(found.assumptions.join(' ')).toContain('nothing checks it');
  });

  it('says that f cannot be told when the interval holds everything', () => {
    const vague = analysed(r.paint, { ...byOxide(r.paintSigma), TiO2: 0.9 });
    expect(fractionFromTracers(vague, slip, ['TiO2']).cannotTell).toMatch(/f cannot be told: no slip/);
    expect(fractionFromTracers(paint, slip, ['TiO2']).cannotTell).toBeNull();
  });

  it('says that f cannot be told when the paint holds more of a tracer than the slip, not f = 1 exactly', () => {
    const rich = analysed({ ...r.paint, Al2O3: 30, SiO2: 12.5 }, byOxide(r.paintSigma));
    const found = fractionFromTracers(rich, slip, ['Al2O3']);
    expect(found.low).toBe(1);
    expect(found.cannotTell).toMatch(/beyond the slip, away from the paint \(f = 1\.[3-5]\d\d/);
  });

  it('a tracer below detection bounds f from above', () => {
    const clean = { ...paint, amounts: { ...paint.amounts, TiO2: amount(null, null, 0.05) } };
    const found = fractionFromTracers(clean, slip, ['TiO2']);
    expect(found.low).toBe(0);
    expect(found.high).toBeLessThan(0.07);
  });

  it('refuses no tracer, one unseen in the slip, one unmeasured, and one without uncertainty', () => {
    expect(() => fractionFromTracers(paint, slip, [])).toThrow(/at least one tracer/);
    const bare = { ...slip, amounts: { ...slip.amounts, TiO2: amount(0.05, 0.04) } };
    expect(() => fractionFromTracers(paint, bare, ['TiO2'])).toThrow(/TiO2 of slip is 0.05 ± 0.040 wt%/);
    expect(() => fractionFromTracers(paint, slip, ['SnO2'])).toThrow(/SnO2 of Tile 1 was not measured/);
    expect(() => fractionFromTracers(analysed(r.paint), slip, ['TiO2'])).toThrow(/TiO2 of Tile 1 has none/);
  });
});
