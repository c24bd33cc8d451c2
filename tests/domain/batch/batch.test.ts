import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fireBatch } from '../../../api/domain/batch/batch.ts';
import { fireAt } from '../../../api/domain/batch/fire.ts';
import { airForLimit, gasLitres } from '../../../api/domain/batch/gas.ts';
import { materialFromAnalysis, materialFromFormula } from '../../../api/domain/batch/material.ts';
import { benchSheet, scaleBatch } from '../../../api/domain/batch/scale.ts';
import { starterShelf } from '../../../api/domain/batch/shelf.ts';
import { type BatchLine, GASES } from '../../../api/domain/batch/types.ts';
import { percentOfMoles, unityFormula } from '../../../api/domain/batch/unity.ts';

const fire = fireAt({ celsius: 850 });
const shelf = starterShelf();
const named = (id: string) => shelf.find((m) => m.id === id)!;
const pure = (formula: string) => materialFromFormula({ id: formula, name: formula }, formula);
const percents = (lines: readonly BatchLine[], at = fire) =>
  Object.fromEntries(fireBatch(lines, at).oxides.map((o) => [o.oxide, o.percent]));

const batch = fc
  .array(
    fc.record({
      material: fc.constantFrom(...shelf),
      amount: fc.integer({ min: 1, max: 5000 }).map((n) => n / 10),
      water: fc.integer({ min: 0, max: 60 }),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map((lines): BatchLine[] => lines);

describe('a batch accounts for every gram', () => {
  it('line by line and in total', () => {
    fc.assert(
      fc.property(batch, fc.integer({ min: 300, max: 1200 }), (lines, celsius) => {
        const { lines: rows, totals } = fireBatch(lines, fireAt({ celsius }));
        for (const row of [...rows, totals]) {
          const gases = GASES.reduce((sum, gas) => sum + row.gases[gas], 0);
          expect(row.weighed).toBeCloseTo(row.water + row.dry, 8);
          expect(row.dry).toBeCloseTo(row.fired + gases + row.unreported, 8);
        }
        expect(totals.fired).toBeCloseTo(
          rows.reduce((sum, row) => sum + row.fired, 0),
          8,
        );
      }),
    );
  });
  it('sulfur brought in is kept or given off, whatever the range', () => {
    fc.assert(
      fc.property(batch, (lines) => {
        const { sulfur } = fireBatch(lines, fire);
        const accounted = sulfur.kept.central * (32.06 / 80.057) + sulfur.dioxide.central * (32.06 / 64.058);
        expect(accounted).toBeCloseTo(sulfur.brought.central, 6);
        // No sulfur is kept that was not brought in.
        expect(sulfur.kept.high * (32.06 / 80.057)).toBeLessThanOrEqual(sulfur.brought.high + 1e-9);
        expect(sulfur.kept.low).toBeLessThanOrEqual(sulfur.kept.central);
        expect(sulfur.kept.central).toBeLessThanOrEqual(sulfur.kept.high);
      }),
    );
  });
});

describe('the fired composition', () => {
  it('sums to 100 in wt% and mole %, each figure inside its range', () => {
    fc.assert(
      fc.property(batch, (lines) => {
        const { oxides } = fireBatch(lines, fire);
        expect(oxides.reduce((sum, o) => sum + o.percent, 0)).toBeCloseTo(100, 8);
        expect(oxides.reduce((sum, o) => sum + o.molePercent, 0)).toBeCloseTo(100, 8);
        for (const o of oxides) {
          expect(o.low).toBeLessThanOrEqual(o.percent + 1e-9);
          expect(o.high).toBeGreaterThanOrEqual(o.percent - 1e-9);
          expect(o.sigma).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });
  it('does not change when every amount is scaled', () => {
    fc.assert(
      fc.property(batch, fc.double({ min: 0.01, max: 100, noNaN: true }), (lines, k) => {
        const scaled = percents(lines.map((line) => ({ ...line, amount: line.amount * k })));
        for (const [oxide, wt] of Object.entries(percents(lines))) expect(scaled[oxide]).toBeCloseTo(wt, 8);
      }),
    );
  });
  it('takes water out before it counts', () => {
    const wet = percents([
      { material: named('quartz'), amount: 50, water: 20 },
      { material: named('litharge'), amount: 60 },
    ]);
    expect(wet.SiO2).toBeCloseTo(40, 8);
  });
  it('reports sulfate that stays, so that lead from raw galena is a range', () => {
    const pbo = fireBatch(
      [
        { material: named('galena'), amount: 60 },
        { material: named('quartz'), amount: 40 },
      ],
      fire,
    ).oxides.find((o) => o.oxide === 'PbO')!;
    expect(pbo.high - pbo.low).toBeGreaterThan(3);
  });
  /** One weighing of 0.01 g in 10 g each of two oxides: d% = 100·(b/T²)·σ each way, in quadrature. */
  it('carries the weighing error as first-order propagation by hand gives it', () => {
    const { oxides } = fireBatch(
      [
        { material: named('quartz'), amount: 10 },
        { material: named('litharge'), amount: 10 },
      ],
      fire,
      0.01,
    );
    expect(oxides[0]!.sigma).toBeCloseTo(100 * (10 / 400) * 0.01 * Math.SQRT2, 8);
  });
  it('carries the standard deviations of a clay', () => {
    const clay = materialFromAnalysis(
      { id: 'c', name: 'clay' },
      { values: { SiO2: 60, Al2O3: 40 }, lossOnIgnition: 0, sigma: { SiO2: 0.6 } },
    );
    const { oxides } = fireBatch([{ material: clay, amount: 100 }], fire, 0);
    expect(oxides.find((o) => o.oxide === 'SiO2')!.sigma).toBeCloseTo(0.6 * 0.4, 8);
  });
  it('leaves the loss of galena as a range over the sulfur kept, worked by hand with IUPAC 2021 masses', () => {
    const of = (formula: string) => materialFromFormula({ id: formula, name: formula }, formula);
    const batch = [
      { material: of('PbS'), amount: 60 },
      { material: of('SiO2'), amount: 40 },
    ];
    const { loss } = fireBatch(batch, fireAt({ celsius: 850 }));
    // Pb 207.2, S 32.06, O 15.999: n = 60/239.26 mol of lead, PbO 223.199, SO3 80.057; kept 0.2 to 0.5 per lead.
    const left = (perLead: number) => 40 + (60 / 239.26) * (223.199 + perLead * 80.057);
    expect(loss.high).toBeCloseTo(100 - left(0.2), 2);
    expect(loss.low).toBeCloseTo(100 - left(0.5), 2);
    expect(loss.percent).toBeCloseTo(100 - left(0.35), 2);
    // At 600 °C all may turn to sulfate, or stay galena: nothing lost.
    const cool = fireBatch(batch, fireAt({ celsius: 600 })).loss;
    expect(cool.low).toBeCloseTo(100 - left(1), 2);
    expect(cool.high).toBeCloseTo(0, 10);
  });
  it('holds every loss that the oxides of the same batch allow', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 300, max: 1200 }), (galena, celsius) => {
        const of = (formula: string) => materialFromFormula({ id: formula, name: formula }, formula);
        const batch = [
          { material: of('PbS'), amount: galena },
          { material: of('CaCO3'), amount: 100 - galena },
        ];
        const { loss } = fireBatch(batch, fireAt({ celsius }));
        expect(loss.low).toBeLessThanOrEqual(loss.percent + 1e-9);
        expect(loss.high).toBeGreaterThanOrEqual(loss.percent - 1e-9);
      }),
      { numRuns: 50 },
    );
  });
  it('leaves the loss of a clay with unreported mass as a range', () => {
    const { loss } = fireBatch([{ material: named('red-clay'), amount: 100 }], fire);
    expect(loss.high - loss.low).toBeCloseTo(100 - 91.75, 1);
    expect(loss.percent).toBeCloseTo((loss.low + loss.high) / 2, 10);
  });
  it('is a gain where oxygen is taken up', () => {
    expect(fireBatch([{ material: named('magnetite'), amount: 100 }], fire).loss.percent).toBeCloseTo(
      -3.455,
      2,
    );
  });
});

/** C. F. Binns, The Potter's Craft: PbO .6, CaO .3, K2O .1, Al2O3 .2, SiO2 1.6 is a batch of 314.3 parts. */
describe("Binns's molecular formula, batch and back", () => {
  const formula = { PbO: 0.6, CaO: 0.3, K2O: 0.1, Al2O3: 0.2, SiO2: 1.6 };
  const printed: BatchLine[] = [
    { material: named('hydrocerussite'), amount: 154.8 },
    { material: named('calcite'), amount: 30 },
    { material: pure('K2O·Al2O3·6SiO2'), amount: 55.7 },
    { material: named('kaolinite'), amount: 25.8 },
    { material: named('quartz'), amount: 48 },
  ];
  const fired = fireBatch(printed, fireAt({ celsius: 1000 }));
  it('the batch of 314.3 fires to the formula', () => {
    expect(fired.totals.dry).toBeCloseTo(314.3, 10);
    const unity = unityFormula(percents(printed));
    for (const { oxide, moles } of [...unity.fluxes, ...unity.amphoteric, ...unity.acid])
      expect(Math.abs(moles / formula[oxide as keyof typeof formula] - 1), oxide).toBeLessThan(0.004);
  });
  /** wt% computed from the formula with IUPAC 2021 weights, outside this code. */
  it('the formula is PbO 48.40, CaO 6.08, K2O 3.40, Al2O3 7.37, SiO2 34.74 wt%', () => {
    const wanted = { PbO: 48.4, CaO: 6.08, K2O: 3.4, Al2O3: 7.37, SiO2: 34.74 };
    const found = percentOfMoles(formula);
    for (const [oxide, wt] of Object.entries(wanted))
      expect(Math.abs(found[oxide]! - wt)).toBeLessThanOrEqual(0.0051);
    for (const [oxide, wt] of Object.entries(wanted))
      expect(Math.abs(percents(printed)[oxide]! - wt)).toBeLessThan(0.08);
  });
  it('from formula to wt% and back is the same formula', () => {
    const { fluxes, amphoteric, acid } = unityFormula(percentOfMoles(formula));
    const back = Object.fromEntries([...fluxes, ...amphoteric, ...acid].map((p) => [p.oxide, p.moles]));
    for (const [oxide, n] of Object.entries(formula)) expect(back[oxide]).toBeCloseTo(n, 12);
  });
});

describe('scaling and the bench sheet', () => {
  it.each(['weighed', 'dry', 'fired'] as const)('scales to a wanted amount %s', (of) => {
    fc.assert(
      fc.property(batch, fc.double({ min: 1, max: 1e4, noNaN: true }), (lines, grams) => {
        const scaled = scaleBatch(lines, { grams, of }, fire);
        expect(fireBatch(scaled, fire).totals[of] / grams).toBeCloseTo(1, 9);
      }),
    );
  });
  it('runs a total that the pan would show, and says what is short', () => {
    const lines = [1 / 3, 1 / 3, 1 / 3].map((amount, i) => ({
      material: { ...named('quartz'), onHand: i === 0 ? 0.1 : null },
      amount,
    }));
    const sheet = benchSheet(lines, 1);
    expect(sheet.rows.map((r) => r.running)).toEqual([0.3, 0.6, 0.9]);
    // Dry is of what is weighed, not of what was wished: it never passes the pan.
    expect(sheet.dry).toBe(sheet.weighed);
    expect(sheet.rows[0]!.short).toBeCloseTo(0.2, 10);
    expect(sheet.rows[1]!.short).toBeNull();
    expect(sheet.cost).toBeNull();
  });
  it('adds up the cost where every price is known', () => {
    const priced = { ...named('quartz'), pricePerKg: 3 };
    expect(benchSheet([{ material: priced, amount: 500 }]).cost).toBeCloseTo(1.5, 10);
  });
});

/** CODATA molar volume of an ideal gas at 273.15 K and 101.325 kPa, 22.41396954 L/mol (from memory). */
describe('gas volumes', () => {
  it('agree with the molar volume at 0 °C', () => {
    expect(gasLitres('SO2', 64.058, { celsius: 0, kilopascal: 101.325 })).toBeCloseTo(22.41397, 4);
  });
  it('fill air to a limit', () => {
    expect(airForLimit('SO2', 64.058, 5)).toBeCloseTo(24.4654 / 1000 / 5e-6, 0);
  });
  it('are refused below absolute zero', () =>
    expect(() => gasLitres('SO2', 1, { celsius: -300, kilopascal: 100 })).toThrow('absolute zero'));
});

describe('what cannot be a batch is refused', () => {
  const quartz = named('quartz');
  it.each([
    [[{ material: quartz, amount: -3 }], 'zero or more; Quartz is -3'],
    [[{ material: quartz, amount: 0 }], 'above zero'],
    [[{ material: quartz, amount: 1, water: 100 }], 'water content'],
    [[{ material: quartz, amount: Number.NaN }], 'zero or more'],
    [[{ material: pure('H2O'), amount: 5 }], 'all of it leaves'],
  ])('%#', (lines, words) => expect(() => fireBatch(lines, fire)).toThrow(words));
  it('a wanted amount of nothing', () =>
    expect(() => scaleBatch([{ material: quartz, amount: 1 }], { grams: 0, of: 'dry' }, fire)).toThrow(
      'above zero',
    ));
  it('a formula without flux', () =>
    expect(() => unityFormula({ SiO2: 60, Al2O3: 40 })).toThrow('at least one flux'));
  it('negative moles', () => expect(() => percentOfMoles({ SiO2: -1 })).toThrow('zero or more'));
});
