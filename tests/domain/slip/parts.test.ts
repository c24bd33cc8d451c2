import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { averageSpots } from '../../../api/domain/composition/spots.ts';
import { assumeErrors } from '../../../api/domain/slip/assume-errors.ts';
import { closedCovariance } from '../../../api/domain/slip/closed-covariance.ts';
import { consistencyOf, effectiveDf, riseFor95, twoSided95 } from '../../../api/domain/slip/consistency.ts';
import { directionBetween, directionWords } from '../../../api/domain/slip/direction.ts';
import { estimateFraction, tellsNothing } from '../../../api/domain/slip/estimate.ts';
import { measurementOf, sharedOxides } from '../../../api/domain/slip/measurement.ts';
import { bisect, goldenSection, profile } from '../../../api/domain/slip/minimise.ts';
import { poolSpots } from '../../../api/domain/slip/pooled-spots.ts';
import { likeWithLike } from '../../../api/domain/slip/slip-state.ts';
import { whiten } from '../../../api/domain/slip/weighted.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { amount, analysed } from './support.ts';

describe('covariance of closed amounts', () => {
  const three = analysed({ PbO: 55, SiO2: 38, TiO2: 7 }, { PbO: 1, SiO2: 0.5, TiO2: 0.2 });

  it('has rows that sum to 0: what one oxide gains the others lose', () => {
    for (const row of closedCovariance(three, ['PbO', 'SiO2', 'TiO2']))
      expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(0, 12);
  });

  it('is what closing simulated readings gives', () => {
    const { normal } = randomStream(1);
    const closed = Array.from({ length: 40_000 }, () => {
      const x = [55 + normal(), 38 + 0.5 * normal(), 7 + 0.2 * normal()];
      const sum = x[0]! + x[1]! + x[2]!;
      return x.map((v) => (100 * v) / sum);
    });
    const mean = [0, 1, 2].map((j) => closed.reduce((s, r) => s + r[j]!, 0) / closed.length);
    const found = closedCovariance(three, ['PbO', 'SiO2', 'TiO2']);
    for (const [i, j] of [
      [0, 0],
      [0, 1],
      [2, 2],
    ] as const) {
      const simulated =
        closed.reduce((s, r) => s + (r[i]! - mean[i]!) * (r[j]! - mean[j]!), 0) / closed.length;
      expect(found[i]![j]! / simulated).toBeCloseTo(1, 1);
    }
  });

  it('keeps on its diagonal the variance of a scatter, which was measured on closed amounts', () => {
    const { normal } = randomStream(2);
    const closed = Array.from({ length: 5000 }, () => {
      const x = [55 + 1.5 * normal(), 38 + 1.5 * normal(), 7 + 0.2 * normal()];
      const sum = x[0]! + x[1]! + x[2]!;
      const of = (v: number) => ({ ...amount((100 * v) / sum), sigmaBasis: null });
      return { closed: { PbO: of(x[0]!), SiO2: of(x[1]!), TiO2: of(x[2]!) }, rawTotal: 100 };
    });
    const { amounts } = averageSpots(closed);
    const found = closedCovariance({ label: 'T', spots: 5000, amounts }, ['PbO', 'SiO2', 'TiO2']);
    for (const [i, oxide] of ['PbO', 'SiO2', 'TiO2'].entries())
      expect(found[i]![i]! / amounts[oxide]!.sigma! ** 2).toBeCloseTo(1, 9);
  });

  it('refuses an oxide without uncertainty', () => {
    expect(() => closedCovariance(analysed({ PbO: 1 }), ['PbO'])).toThrow(/PbO of Tile 1 has none/);
  });
});

describe('measurements', () => {
  it('σ found from spots brings its degrees of freedom; rounding adds step²/12', () => {
    const MgO = {
      ...{ value: 2, limit: null, resolution: 0.12 },
      ...{ sigma: 0.1, sigmaBasis: 'spots' as const, sigmaDf: 8 },
    };
    const found = measurementOf({ label: 'T', spots: 9, amounts: { MgO } }, 'MgO');
    expect(found.variance).toBeCloseTo(0.01 + 0.0012, 12);
    expect(found.df).toBe(8);
  });

  it('below detection is uniform up to the limit (JCGM 100:2008, 4.3.7), and needs one', () => {
    const at = (limit: number | null, value: number | null) => ({
      label: 'T',
      spots: 1,
      amounts: { SnO2: amount(value, null, limit) },
    });
    expect(measurementOf(at(0.12, null), 'SnO2')).toEqual({
      value: 0.06,
      variance: 0.12 ** 2 / 12,
      df: null,
    });
    expect(measurementOf(at(0.12, 0), 'SnO2').value).toBe(0.06);
    expect(() => measurementOf(at(null, null), 'SnO2')).toThrow(/SnO2 of T has none/);
  });

  it('shared oxides keep the order of the first analysis', () => {
    expect(sharedOxides([analysed({ TiO2: 1, PbO: 2, MgO: 1 }), analysed({ PbO: 1, TiO2: 1 })])).toEqual([
      'TiO2',
      'PbO',
    ]);
    expect(sharedOxides([])).toEqual([]);
  });

  it('pooling spots leaves stated σ alone and gives every analysis the same scatter per spot', () => {
    const spots = (n: number, sd: number) => ({
      ...amount(1, sd / Math.sqrt(n)),
      ...{ sigmaBasis: 'spots' as const, sigmaDf: n - 1 },
    });
    const all = [
      { label: 'a', spots: 2, amounts: { TiO2: spots(2, 0.01), PbO: amount(50, 1) } },
      { label: 'b', spots: 4, amounts: { TiO2: spots(4, 0.03), PbO: amount(50, 1) } },
    ];
    const { analyses, df } = poolSpots(all);
    expect(df).toBe(4);
    expect(analyses[0]!.amounts.PbO).toBe(all[0]!.amounts.PbO);
    const [a, b] = analyses.map((x) => x.amounts.TiO2!.sigma!);
    expect(a! * Math.sqrt(2)).toBeCloseTo(b! * 2, 12);
    expect(b! * 2).toBeCloseTo(Math.sqrt((0.01 ** 2 + 3 * 0.03 ** 2) / 4), 12);
    expect(poolSpots([all[0]!].map((x) => ({ ...x, spots: 1 }))).df).toBeNull();
  });
});

describe('assumed errors', () => {
  it('fill only what is unknown, keep what was stated or below detection, and are marked', () => {
    const paint = {
      label: 'T',
      spots: 1,
      amounts: { PbO: amount(50, 1), MgO: amount(2), SnO2: amount(null, null, 0.1) },
    };
    const { analysed: filled, assumed } = assumeErrors(paint, 0.04);
    expect(assumed).toEqual(['MgO']);
    expect(filled.amounts.MgO).toMatchObject({ sigma: 0.08, sigmaBasis: 'assumed' });
    expect([filled.amounts.PbO, filled.amounts.SnO2]).toEqual([paint.amounts.PbO, paint.amounts.SnO2]);
  });

  it('refuse a share that is none', () => {
    expect(() => assumeErrors(analysed({ PbO: 1 }), 0)).toThrow(/between 0 and 1; it is 0/);
  });
});

describe('profiles', () => {
  it('a parabola gives its vertex and ± the root of the rise', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.3, max: 1.3, noNaN: true }),
        fc.double({ min: 0.01, max: 0.1, noNaN: true }),
        (centre, sigma) => {
          const found = profile((x) => ((x - centre) / sigma) ** 2, { from: -1, to: 2, rise: () => 4 });
          expect(found.best).toBeCloseTo(centre, 6);
          expect(found.low).toBeCloseTo(centre - 2 * sigma, 6);
          expect(found.high).toBeCloseTo(centre + 2 * sigma, 6);
        },
      ),
    );
  });

  it('an interval that runs off the range has no end there', () => {
    expect(profile((x) => x * x, { from: -1, to: 1, rise: () => 9 })).toMatchObject({
      low: null,
      high: null,
    });
  });

  it('golden section and halving find what they are asked for', () => {
    expect(goldenSection((x) => Math.cosh(x - 0.7), -3, 4)).toBeCloseTo(0.7, 6);
    expect(bisect((x) => x ** 3 > 2, 0, 2)).toBeCloseTo(Math.cbrt(2), 12);
  });
});

describe('consistency and quantiles', () => {
  it('a χ² at its 95 % point has p .05, by published quantiles (NIST/SEMATECH e-Handbook 1.3.6.7.4)', () => {
    expect(consistencyOf(7.81473, 3).p).toBeCloseTo(0.05, 6);
    expect(consistencyOf(11.0705, 5).p).toBeCloseTo(0.05, 6);
  });

  it('uncertainties that were themselves found from few spots make the test milder', () => {
    expect(consistencyOf(20, 4, 3).p).toBeGreaterThan(consistencyOf(20, 4).p);
    // The figure shown is the one that p follows from: R's pf(5, 4, 3, lower.tail = FALSE) is 0.10855 (R 4.2.2).
    expect(consistencyOf(20, 4, 3).sentence).toContain('F = χ²/df = 5.0 on 4 and 3 degrees of freedom');
    expect(consistencyOf(20, 4, 3).sentence).toContain('p = 0.109');
    expect(consistencyOf(20, 4).sentence).toContain('χ² = 20.0 on 4 degrees of freedom');
    expect(riseFor95(20, { fitDf: 4, df: 3 })).toBeCloseTo(twoSided95(3) ** 2, 10);
  });

  it('a consistent fit rises by 1.96², an inconsistent one by t² times χ²/df', () => {
    expect(riseFor95(2, { fitDf: 2, df: null })).toBeCloseTo(1.959964 ** 2, 5);
    expect(riseFor95(50, { fitDf: 5, df: null })).toBeCloseTo(10 * twoSided95(5) ** 2, 8);
  });

  it('effective degrees of freedom lie between the least part and the sum (Welch–Satterthwaite)', () => {
    const df = fc.integer({ min: 1, max: 30 });
    const variance = fc.double({ min: 0.01, max: 10, noNaN: true });
    fc.assert(
      fc.property(df, df, variance, variance, (a, b, u, v) => {
        const found = effectiveDf([
          { variance: u, df: a },
          { variance: v, df: b },
        ])!;
        expect(found).toBeGreaterThan(Math.min(a, b) - 1e-9);
        expect(found).toBeLessThan(a + b + 1e-9);
      }),
    );
  });

  it('an estimate below nothing is kept at 0 and its raw value shown', () => {
    const found = estimateFraction({
      kind: 'batch',
      chiSquare: (f) => ((f + 0.1) / 0.1) ** 2,
      fitDf: 0,
      df: () => null,
    });
    expect(found).toMatchObject({ f: 0, low: 0 });
    expect(found.unbounded).toBeCloseTo(-0.1, 6);
    expect(found.high).toBeCloseTo(0.096, 3);
    expect(tellsNothing(found, '')).toBeNull();
  });

  it('an interval that lies wholly beyond nothing or all says so instead of shrinking to a point', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.05, noNaN: true }),
        fc.double({ min: -0.45, max: 1.45, noNaN: true }),
        (sigma, centre) => {
          const chiSquare = (f: number) => ((f - centre) / sigma) ** 2;
          const found = estimateFraction({ kind: 'batch', chiSquare, fitDf: 0, df: () => null });
          const words = tellsNothing(found, 'angle');
          const half = 1.959964 * sigma;
          if (centre + half < -1e-6) expect(words).toMatch(/beyond the paint without slip.*f = −0\.\d/);
          else if (centre - half > 1 + 1e-6) expect(words).toMatch(/beyond the slip.*f = 1\.\d/);
          else if (centre + half > 1e-6 && centre - half < 1 - 1e-6) expect(words).toBeNull();
        },
      ),
    );
  });

  it('an interval that runs off what was searched is called a lower bound', () => {
    const chiSquare = (f: number) => ((f - 0.5) / 0.6) ** 2;
    const wide = estimateFraction({ kind: 'batch', chiSquare, fitDf: 0, df: () => null });
    expect(wide.warnings).toEqual([
      'The interval of f runs off the range searched (−0.5 to 1.5) on both sides: the uncertainty of f is at least what is given.',
    ]);
    expect(tellsNothing(wide, 'x')).toMatch(/no slip .* and nothing but slip/);
    const narrow = (f: number) => ((f - 0.5) / 0.1) ** 2;
    expect(estimateFraction({ kind: 'batch', chiSquare: narrow, fitDf: 0, df: () => null }).warnings).toEqual(
      [],
    );
  });
});

describe('direction of two end members', () => {
  it('does not mind their lengths or signs', () => {
    const end = fc.array(fc.double({ min: 0.1, max: 10, noNaN: true }), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(end, end, fc.double({ min: 0.1, max: 9, noNaN: true }), (a, b, scale) => {
        const [one, other] = [
          directionBetween(a, b),
          directionBetween(
            b,
            a.map((x) => -scale * x),
          ),
        ];
        expect(other.angle).toBeCloseTo(one.angle, 5);
      }),
    );
  });

  it('is 45° and 1 + √2 between an axis and the diagonal; endless for one direction', () => {
    const found = directionBetween([1, 0], [1, 1]);
    expect(found.angle).toBeCloseTo(45, 10);
    expect(found.condition).toBeCloseTo(1 + Math.SQRT2, 10);
    expect(directionBetween([1, 2], [2, 4]).condition).toBeGreaterThan(1e7);
  });

  it('warns above a condition number of 30 only', () => {
    expect(directionWords({ angle: 3, condition: 38 }, 'a and b').warning).toMatch(
      /nearly in the same direction/,
    );
    expect(directionWords({ angle: 9, condition: 12 }, 'a and b').warning).toBeNull();
  });
});

describe('whitening', () => {
  it('turns the covariance into the identity: vᵀV⁻¹v is the sum of squares', () => {
    const v = [
      [4, 1],
      [1, 2],
    ];
    const [w] = whiten([[3, 5]], v);
    // V⁻¹ of [[4, 1], [1, 2]] is [[2, −1], [−1, 4]]/7.
    expect(w![0]! ** 2 + w![1]! ** 2).toBeCloseTo((2 * 9 - 2 * 15 + 4 * 25) / 7, 10);
  });
});

describe('like with like', () => {
  const out = (f: number) => ({ kind: 'out', f, from: 'tracers' }) as const;
  it('says for both sides whether slip is in or out', () => {
    const found = likeWithLike(
      { name: 'Tile 3', states: [out(0.2)] },
      { name: 'the references', states: [out(0.1), { kind: 'in' }] },
    );
    expect(found.alike).toBe(false);
    expect(found.sentence).toMatch(
      /Tile 3: slip drawn off \(f = 0\.20.*the references: slip drawn off in 1 of 2.*not alike/,
    );
    expect(
      likeWithLike({ name: 'a', states: [{ kind: 'in' }] }, { name: 'b', states: [{ kind: 'in' }] }),
    ).toEqual({
      alike: true,
      sentence: 'a: slip in; b: slip in. Like is compared with like.',
    });
  });
});
