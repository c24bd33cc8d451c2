import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closure } from '../../../api/domain/composition/closure.ts';
import { averageSpots } from '../../../api/domain/composition/spots.ts';
import type { Amount } from '../../../api/domain/composition/types.ts';
import { measurementOf } from '../../../api/domain/slip/measurement.ts';
import { expectClose } from '../../support/close.ts';
import { amount } from './build.ts';

const spot = (closed: Readonly<Record<string, Amount>>, rawTotal = 99) => ({ closed, rawTotal });
const plain = (values: Readonly<Record<string, number>>) =>
  spot(Object.fromEntries(Object.entries(values).map(([oxide, value]) => [oxide, amount(value)])));

describe('averageSpots', () => {
  it('gives mean and standard deviation of the NIST e-Handbook data (6.5.4.1), n = 5', () => {
    // X: rows (4.0 2.0 .60) …; mean (4.10, 2.08, .604), variances .025, .0070, .00043. Here as parts of 100.
    const rows = [
      [4, 2, 0.6],
      [4.2, 2.1, 0.59],
      [3.9, 2, 0.58],
      [4.3, 2.1, 0.62],
      [4.1, 2.2, 0.63],
    ];
    const spots = rows.map(([a, b, c]) => plain({ K2O: a!, CaO: b!, TiO2: c!, SiO2: 100 - a! - b! - c! }));
    const { amounts, spots: n } = averageSpots(spots);
    expect(n).toBe(5);
    expectClose([amounts.K2O!.value!, amounts.CaO!.value!, amounts.TiO2!.value!], [4.1, 2.08, 0.604]);
    // Variance of a mean: s²/n.
    expectClose(
      [5 * amounts.K2O!.sigma! ** 2, 5 * amounts.CaO!.sigma! ** 2, 5 * amounts.TiO2!.sigma! ** 2],
      [0.025, 0.007, 0.00043],
    );
    expect(amounts.K2O).toMatchObject({ sigmaBasis: 'spots', sigmaDf: 4 });
  });

  it('hands a single spot on as it is', () => {
    const one = spot({ SiO2: amount(60, { sigma: 1, sigmaBasis: 'stated' }), PbO: amount(40) }, 97);
    expect(averageSpots([one])).toEqual({ amounts: one.closed, spots: 1, rawTotal: 97, warnings: [] });
  });

  it('means the raw totals', () => {
    const spots = [spot({ SiO2: amount(100) }, 96), spot({ SiO2: amount(100) }, 99)];
    expect(averageSpots(spots).rawTotal).toBe(97.5);
  });

  const composition = fc.array(fc.double({ min: 0.01, max: 50, noNaN: true }), {
    minLength: 3,
    maxLength: 3,
  });
  const named = (parts: readonly number[]) => {
    const [SiO2, PbO, MnO] = closure(parts);
    return plain({ SiO2: SiO2!, PbO: PbO!, MnO: MnO! });
  };

  it('closes to 100, whatever the order of the spots', () => {
    fc.assert(
      fc.property(fc.array(composition, { minLength: 2, maxLength: 6 }), (rows) => {
        const spots = rows.map(named);
        const { amounts } = averageSpots(spots);
        expectClose(
          Object.values(amounts).reduce((sum, { value }) => sum + value!, 0),
          100,
        );
        const turned = averageSpots([...spots].reverse()).amounts;
        for (const [oxide, { value }] of Object.entries(amounts)) expectClose(turned[oxide]!.value!, value!);
      }),
    );
  });

  it('lets an oxide measured in some spots only leave the ratios of the others alone', () => {
    fc.assert(
      fc.property(composition, composition, fc.double({ min: 0.1, max: 30, noNaN: true }), (a, b, tin) => {
        const [first, second] = [named(a), named(b)];
        const extra = Object.fromEntries(
          Object.entries(first.closed).map(([oxide, x]) => [oxide, amount((x.value! * (100 - tin)) / 100)]),
        );
        const { amounts, warnings } = averageSpots([spot({ ...extra, SnO2: amount(tin) }), second]);
        const without = averageSpots([first, second]).amounts;
        expectClose(amounts.PbO!.value! / amounts.MnO!.value!, without.PbO!.value! / without.MnO!.value!);
        expectClose(
          Object.values(amounts).reduce((sum, { value }) => sum + value!, 0),
          100,
        );
        expect(warnings).toEqual(['SnO2: measured in 1 of 2 spots.']);
      }),
    );
  });

  it('treats below detection by limit, and says what it did', () => {
    const rest = (cu: number | null, change: Partial<Amount> = {}) =>
      spot({ SiO2: amount(100), CuO: amount(cu, change) });
    const mixed = averageSpots([rest(0.3, { limit: 0.1 }), rest(null, { limit: 0.1 })]);
    expectClose(mixed.amounts.CuO!.value!, (0.1825 * 100) / 100.1825);
    expect(mixed.warnings).toEqual([
      'CuO: below detection in 1 of 2 spots, counted there as 0.65 of the limit.',
    ]);
    const unknown = averageSpots([rest(0.3), rest(null)]);
    expectClose(unknown.amounts.CuO!.value!, (0.3 * 100) / 100.3);
    expect(unknown.warnings.join()).toContain('left out of the mean, which is therefore too high');
    const none = averageSpots([rest(null, { limit: 0.1 }), rest(null, { limit: 0.3 })]);
    expect(none.amounts.CuO).toEqual(amount(null, { limit: 0.2 }));
    expect(none.warnings).toEqual([]);
  });

  it('never claims less than the stated σ leaves in a mean', () => {
    const stated = (value: number, sigma: number) =>
      spot({ SiO2: amount(100 - value), PbO: amount(value, { sigma, sigmaBasis: 'stated' }) });
    const same = averageSpots([stated(40, 1), stated(40, 1)]).amounts.PbO!;
    expect(same).toMatchObject({ value: 40, sigmaBasis: 'stated' });
    expectClose(same.sigma!, Math.SQRT1_2);
    const near = averageSpots([stated(40, 1), stated(40.1, 1)]).amounts.PbO!;
    expect(near.sigmaBasis).toBe('stated');
    const apart = averageSpots([stated(40, 1), stated(48, 1)]).amounts.PbO!;
    expect(apart.sigmaBasis).toBe('spots');
    expectClose(apart.sigma!, 4);
    expect(averageSpots([plain({ PbO: 100 }), plain({ PbO: 100 })]).amounts.PbO!.sigma).toBeNull();
  });

  it('holds the mean of spots against what the stated σ leaves in a mean, like against like', () => {
    // Nine spots, each ± 0.2 as stated: 0.2/3 is left in their mean, more than their scatter of 0.11/3 shows.
    const z = [-1.5, -1, -0.5, -0.25, 0, 0.25, 0.5, 1, 1.5];
    const nine = z.map((x) => {
      const of = (value: number) => amount(value, { sigma: 0.2, sigmaBasis: 'stated' });
      return spot({ SiO2: of(40 + 0.12 * x), PbO: of(60 - 0.12 * x) });
    });
    const { SiO2 } = averageSpots(nine).amounts;
    expectClose(SiO2!.sigma!, 0.2 / 3);
    expect(SiO2!.sigmaBasis).toBe('stated');
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 30, max: 50, noNaN: true }), { minLength: 2, maxLength: 9 }),
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        (values, sigma) => {
          const of = (value: number) => amount(value, { sigma, sigmaBasis: 'stated' });
          const used = averageSpots(values.map((v) => spot({ SiO2: of(v), PbO: of(100 - v) }))).amounts;
          const label = { label: 'T', spots: values.length, amounts: used };
          const left = Math.sqrt(measurementOf(label, 'SiO2').variance);
          // Spots are brought to one scale and closed again, here both by a factor of 1.
          expect(left).toBeGreaterThanOrEqual((sigma / Math.sqrt(values.length)) * (1 - 1e-9));
        },
      ),
    );
  });

  it('hands on an assumed σ as assumed, and what rounding leaves in the mean', () => {
    const known = { sigma: 2, sigmaBasis: 'assumed' as const, resolution: 0.1 };
    const one = spot({ SiO2: amount(60), PbO: amount(40, known) });
    const { PbO } = averageSpots([one, one, one, one]).amounts;
    expect(PbO).toEqual(amount(40, { sigma: 1, sigmaBasis: 'assumed', resolution: 0.05 }));
  });

  it('refuses no spots, and spots with nothing in common', () => {
    expect(() => averageSpots([])).toThrow('at least one analysis');
    expect(() => averageSpots([plain({ SiO2: 100 }), plain({ PbO: 100 })])).toThrow('share none');
    expect(() =>
      averageSpots([spot({ CuO: amount(null), PbO: amount(100) }), spot({ CuO: amount(1) })]),
    ).toThrow('the 2 spots share none');
  });
});
