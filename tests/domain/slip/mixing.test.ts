import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closure } from '../../../api/domain/composition/closure.ts';
import { averageSpots } from '../../../api/domain/composition/spots.ts';
import { largestDrawOff } from '../../../api/domain/slip/draw-off-limit.ts';
import { measurementOf } from '../../../api/domain/slip/measurement.ts';
import { drawOff, mixIn } from '../../../api/domain/slip/mixing.ts';
import { amount, amounts, valuesOf } from './support.ts';

const OXIDES = ['PbO', 'SiO2', 'Al2O3', 'TiO2', 'MnO'];
const composition = fc
  .array(fc.double({ min: 0.01, max: 100, noNaN: true }), { minLength: 5, maxLength: 5 })
  .map((parts) => Object.fromEntries(closure(parts).map((wt, j) => [OXIDES[j]!, wt])));

describe('mixing line', () => {
  it('drawing off what was mixed in gives the paint back', () => {
    fc.assert(
      fc.property(
        composition,
        composition,
        fc.double({ min: 0, max: 0.95, noNaN: true }),
        (paint, slip, f) => {
          const mixture = mixIn(amounts(paint), amounts(slip), f);
          const back = valuesOf(drawOff(mixture, amounts(slip), f).amounts);
          for (const oxide of OXIDES) expect(back[oxide]).toBeCloseTo(paint[oxide]!, 8);
        },
      ),
    );
  });

  it('a mixture of two closed compositions is closed', () => {
    fc.assert(
      fc.property(composition, composition, fc.double({ min: 0, max: 1, noNaN: true }), (paint, slip, f) => {
        const mixture = Object.values(valuesOf(mixIn(amounts(paint), amounts(slip), f)));
        expect(mixture.reduce((a, b) => a! + b!, 0)).toBeCloseTo(100, 9);
      }),
    );
  });

  it('drawing off in two goes is drawing off once: 1 − f = (1 − f₁)(1 − f₂)', () => {
    const [paint, slip] = [amounts({ PbO: 40, SiO2: 60 }), amounts({ PbO: 1, SiO2: 99 })];
    const twice = drawOff(drawOff(paint, slip, 0.1).amounts, slip, 0.2).amounts;
    const once = drawOff(paint, slip, 1 - 0.9 * 0.8).amounts;
    expect(twice.PbO!.value).toBeCloseTo(once.PbO!.value!, 10);
  });

  it('σ follows the law of propagation for a linear model (GUM, JCGM 100:2008, 5.1.2)', () => {
    const { PbO } = drawOff({ PbO: amount(45, 0.6) }, { PbO: amount(5, 0.3) }, 0.2).amounts;
    expect(PbO!.sigma).toBeCloseTo(Math.sqrt(0.6 ** 2 + (0.2 * 0.3) ** 2) / 0.8, 12);
  });

  it('of an average over spots it is the error of the mean that is carried, with its degrees of freedom, once', () => {
    const z = [-1.5, -1, -0.5, -0.25, 0, 0.25, 0.5, 1, 1.5];
    const plain = (value: number) => ({ ...amount(value), sigmaBasis: null });
    const paint = averageSpots(
      z.map((x) => {
        const TiO2 = 0.2 + 0.06 * x;
        return { closed: { TiO2: plain(TiO2), PbO: plain(100 - TiO2) }, rawTotal: 100 };
      }),
    );
    const sd = 0.06 * Math.sqrt(z.reduce((sum, x) => sum + x * x, 0) / 8);
    const slip = amounts({ TiO2: 0.8, PbO: 99.2 }, { TiO2: 0.05, PbO: 0.5 });
    const left = drawOff(paint.amounts, slip, 0.1).amounts.TiO2!;
    const own = (sd * sd) / 9;
    expect(left.sigma! ** 2).toBeCloseTo((own + 0.005 ** 2) / 0.81, 12);
    expect(left.sigmaDf).toBeCloseTo((8 * (own + 0.005 ** 2) ** 2) / own ** 2, 8);
    const again = measurementOf({ label: 'T', spots: 9, amounts: { TiO2: left } }, 'TiO2');
    expect(again.variance).toBeCloseTo(left.sigma! ** 2, 12);
    // Where the paint is 0.20 ± 0.02 (the mean of nine spots) and the slip 0.8 exactly, 0.3·0.8 = 0.2 + 2·0.02.
    const mean = { TiO2: { ...amount(0.2, 0.06 / 3), sigmaBasis: 'spots' as const, sigmaDf: 8 } };
    expect(largestDrawOff(mean, { TiO2: amount(0.8, 0) }).f).toBeCloseTo(0.3, 12);
  });

  it('nothing drawn off leaves every amount as it was', () => {
    const paint = { PbO: amount(45, 0.6), SnO2: amount(null, null, 0.1) };
    expect(drawOff(paint, amounts({ PbO: 1, SnO2: 1 }), 0).amounts).toBe(paint);
  });

  it('an oxide below detection stays so, at the limit the slip leaves it', () => {
    const { SnO2 } = drawOff({ SnO2: amount(null, null, 0.1) }, { SnO2: amount(0.02, 0) }, 0.5).amounts;
    expect(SnO2!.value).toBeNull();
    expect(SnO2!.limit).toBeCloseTo(0.18, 12);
  });

  it('an oxide drawn down to nothing within its uncertainty is spent, below twice its σ', () => {
    const { amounts: left, spent } = drawOff({ TiO2: amount(0.2, 0.03) }, { TiO2: amount(1, 0) }, 0.2);
    expect(spent).toEqual(['TiO2']);
    expect(left.TiO2).toMatchObject({ value: null });
    expect(left.TiO2!.limit).toBeCloseTo((2 * 0.03) / 0.8, 12);
  });

  it('is spent just below two of its σ and not just above, as docs/methods/slip.md says', () => {
    const left = (z: number) => drawOff({ TiO2: amount(0.2 + z * 0.02, 0.02) }, { TiO2: amount(1, 0) }, 0.2);
    expect(left(1.99).spent).toEqual(['TiO2']);
    expect(left(2.01).spent).toEqual([]);
    expect(left(2.01).amounts.TiO2!.value).toBeCloseTo((2.01 * 0.02) / 0.8, 12);
  });

  it('an oxide that was not measured in the slip is dropped, or taken as none there when asked', () => {
    const [paint, slip] = [amounts({ PbO: 50, SiO2: 50 }), amounts({ SiO2: 100 })];
    expect(drawOff(paint, slip, 0.2).dropped).toEqual(['PbO']);
    expect(drawOff(paint, slip, 0.2, { unmeasured: 'none' }).amounts.PbO!.value).toBeCloseTo(62.5, 10);
  });

  it('refuses what would leave an oxide negative beyond its uncertainty, and fractions outside 0–1', () => {
    const [paint, slip] = [{ TiO2: amount(0.2, 0.01) }, { TiO2: amount(1, 0.01) }];
    expect(() => drawOff(paint, slip, 0.3)).toThrow(
      /stay above nothing; at f = 0.3 TiO2 comes to -0.143 wt%/,
    );
    expect(() => drawOff(paint, slip, 1)).toThrow(/below 1; it is 1/);
    expect(() => drawOff(paint, slip, Number.NaN)).toThrow(/it is NaN/);
    expect(() => mixIn(paint, slip, 1.1)).toThrow(/within 0–1; it is 1.1/);
  });
});
