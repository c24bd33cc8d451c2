import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largestDrawOff } from '../../../api/domain/slip/draw-off-limit.ts';
import { drawOff } from '../../../api/domain/slip/mixing.ts';
import { amount, amounts } from './support.ts';

const positive = fc.double({ min: 0.05, max: 60, noNaN: true });

describe('largest draw-off', () => {
  it('just inside the limit drawing off works, just outside it is refused for the oxide that sets it', () => {
    fc.assert(
      fc.property(
        fc.array(positive, { minLength: 3, maxLength: 3 }),
        fc.array(positive, { minLength: 3, maxLength: 3 }),
        fc.double({ min: 0.005, max: 0.1, noNaN: true }),
        (p, s, relative) => {
          const named = (x: number[]) => ({ PbO: x[0]!, SiO2: x[1]!, TiO2: x[2]! });
          const [paint, slip] = [amounts(named(p), relative), amounts(named(s), relative)];
          const { f, oxide } = largestDrawOff(paint, slip);
          expect(() => drawOff(paint, slip, f * (1 - 1e-9))).not.toThrow();
          if (oxide) expect(() => drawOff(paint, slip, f * 1.0001)).toThrow(new RegExp(`${oxide} comes to`));
        },
      ),
    );
  });

  it('without uncertainties it is the least ratio of paint to slip', () => {
    const paint = amounts({ PbO: 40, Al2O3: 6, TiO2: 0.3 });
    const slip = amounts({ PbO: 0.1, Al2O3: 20, TiO2: 0.75 });
    expect(largestDrawOff(paint, slip)).toMatchObject({
      f: 0.3,
      oxide: 'Al2O3',
      strict: 0.3,
      strictOxide: 'Al2O3',
    });
  });

  it('a rough value of a poor oxide does not bind where a sharp one does', () => {
    const paint = { TiO2: amount(0.1, 0.08), Al2O3: amount(6, 0.05) };
    const slip = { TiO2: amount(0.8, 0.02), Al2O3: amount(20, 0.1) };
    expect(largestDrawOff(paint, slip)).toMatchObject({ oxide: 'Al2O3', strictOxide: 'TiO2' });
  });

  it('below detection the paint may hold up to its limit', () => {
    const found = largestDrawOff({ SnO2: amount(null, null, 0.1) }, { SnO2: amount(1, 0) }, { coverage: 0 });
    expect(found.f).toBeCloseTo(0.1, 12);
  });

  it('a slip that holds none of what the paint holds sets no bound', () => {
    expect(largestDrawOff(amounts({ PbO: 50 }), { PbO: amount(0, 0.1) })).toMatchObject({
      f: 0.99,
      oxide: null,
    });
  });

  it('refuses when no oxide is shared', () => {
    expect(() => largestDrawOff(amounts({ PbO: 50 }), amounts({ SiO2: 50 }))).toThrow(/there is none/);
  });
});
