import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adviseBatch } from '../../../api/domain/batch/advice.ts';
import { fireBatch } from '../../../api/domain/batch/batch.ts';
import { contentMass, formulaContent } from '../../../api/domain/batch/content.ts';
import { feasibleCorners, rangeOver, subsets } from '../../../api/domain/batch/feasible-ranges.ts';
import { fireAt } from '../../../api/domain/batch/fire.ts';
import { materialFromFormula } from '../../../api/domain/batch/material.ts';
import { analyseRoast, type RoastRecord } from '../../../api/domain/batch/roast.ts';
import { GALENA_MELTS, judgeRoast, NO_MELTING_NEEDED } from '../../../api/domain/batch/roast-judgement.ts';
import { roastMaterial } from '../../../api/domain/batch/roast-material.ts';
import { ROAST_PHASES } from '../../../api/domain/batch/roast-phases.ts';
import { sulfurOutlook } from '../../../api/domain/batch/sulfur.ts';

const galena = materialFromFormula({ id: 'galena', name: 'Galena' }, 'PbS');
const quartz = materialFromFormula({ id: 'quartz', name: 'Quartz' }, 'SiO2');
const GALENA_MASS = 239.26;
const record = (massOut: number, more: Partial<RoastRecord> = {}): RoastRecord => ({
  charge: [{ material: galena, amount: 100 }],
  massOut,
  weighing: 0.1,
  celsius: 800,
  hours: 4,
  ...more,
});

/** scipy's linprog (HiGHS): tests/fixtures/batch/README.md. */
const fixture = JSON.parse(readFileSync(new URL('../../fixtures/batch/scipy.json', import.meta.url), 'utf8'));
interface Reference {
  readonly input: { galena: number; inert: number; out: number; weighing: number; sulfur?: [number, number] };
  readonly ranges: [number, number][];
}

describe('the ranges that a weighing leaves agree with scipy', () => {
  it.each(fixture.roasts as Reference[])('$input', ({ input, ranges }) => {
    const charge = [{ material: galena, amount: input.galena }];
    if (input.inert) charge.push({ material: quartz, amount: input.inert });
    const sulfur = input.sulfur ? { sulfur: { percent: input.sulfur[0], sigma: input.sulfur[1] } } : {};
    const found = analyseRoast(record(input.out, { charge, weighing: input.weighing, ...sulfur }));
    const spans = [...found.phases.map((p) => p.grams), found.sulfur.grams];
    ranges.forEach(([low, high], i) => {
      const per = i === 6 ? 32.06 : 1;
      expect(Math.abs(spans[i]!.low - low * per)).toBeLessThan(1e-6 * input.out);
      expect(Math.abs(spans[i]!.high - high * per)).toBeLessThan(1e-6 * input.out);
    });
  });
});

/** What 1 mol of lead may have become: shares of lead in each phase. */
const truth = fc
  .array(fc.integer({ min: 0, max: 100 }), { minLength: 6, maxLength: 6 })
  .filter((shares) => shares.some((s) => s > 0))
  .map((shares) => {
    const total = shares.reduce((a, b) => a + b, 0);
    return shares.map((s, i) => s / total / ROAST_PHASES[i]!.lead);
  });

describe('whatever the roast made', () => {
  const weigh = (moles: number[]) => moles.reduce((sum, n, i) => sum + n * ROAST_PHASES[i]!.mass, 0);
  it('lies inside the ranges found from its masses', () => {
    fc.assert(
      fc.property(truth, (moles) => {
        const out = weigh(moles);
        const found = analyseRoast(
          record(out, { charge: [{ material: galena, amount: GALENA_MASS }], weighing: 0.01 }),
        );
        found.phases.forEach(({ grams }, i) => {
          const actual = moles[i]! * ROAST_PHASES[i]!.mass;
          expect(actual).toBeGreaterThanOrEqual(grams.low - 1e-6);
          expect(actual).toBeLessThanOrEqual(grams.high + 1e-6);
        });
        const sulfur = moles.reduce((sum, n, i) => sum + n * ROAST_PHASES[i]!.sulfur, 0);
        const gone = (1 - sulfur) * 64.058;
        expect(gone).toBeGreaterThanOrEqual(found.dioxide.grams.low - 1e-6);
        expect(gone).toBeLessThanOrEqual(found.dioxide.grams.high + 1e-6);
      }),
      { numRuns: 60 },
    );
  });
  it('a sulfur reading only narrows them', () => {
    fc.assert(
      fc.property(truth, (moles) => {
        const out = weigh(moles);
        const charge = [{ material: galena, amount: GALENA_MASS }];
        const sulfur = moles.reduce((sum, n, i) => sum + n * ROAST_PHASES[i]!.sulfur, 0);
        const reading = { percent: (100 * sulfur * 32.06) / out, sigma: 0.1 };
        const wide = analyseRoast(record(out, { charge }));
        const narrow = analyseRoast(record(out, { charge, sulfur: reading }));
        narrow.phases.forEach(({ grams }, i) => {
          expect(grams.low).toBeGreaterThanOrEqual(wide.phases[i]!.grams.low - 1e-6);
          expect(grams.high).toBeLessThanOrEqual(wide.phases[i]!.grams.high + 1e-6);
        });
        expect(narrow.sulfur.percent.high - narrow.sulfur.percent.low).toBeLessThanOrEqual(0.4 + 1e-9);
      }),
      { numRuns: 40 },
    );
  });
  it('becomes a material whose lead is known and whose sulfur is a range', () => {
    fc.assert(
      fc.property(truth, (moles) => {
        const out = weigh(moles);
        const found = analyseRoast(
          record(out, { charge: [{ material: galena, amount: GALENA_MASS }], weighing: 0 }),
        );
        const roasted = roastMaterial({ id: 'r', name: 'roast' }, found);
        for (const content of [roasted.content, roasted.spread!.low, roasted.spread!.high]) {
          expect(contentMass(content)).toBeCloseTo(1, 9);
          expect(content.moles.Pb! * out).toBeCloseTo(1, 6);
        }
        expect(roasted.spread!.low.moles.S ?? 0).toBeLessThanOrEqual(roasted.spread!.high.moles.S! + 1e-12);
      }),
      { numRuns: 40 },
    );
  });
});

describe('one weighing', () => {
  it('of 105 g from 100 g of galena leaves a range for every phase', () => {
    const { phases, change, expected } = analyseRoast(record(105));
    expect(change).toBeCloseTo(5, 10);
    for (const { grams } of phases) expect(grams.high - grams.low).toBeGreaterThan(10);
    expect(expected).not.toBeNull();
  });
  it('tells the lead exactly as far as the balance does', () => {
    const { leadOxide } = analyseRoast(record(105));
    expect(leadOxide.low).toBeLessThanOrEqual((100 * 93.2867) / 105 + 1e-3);
    expect(leadOxide.high - leadOxide.low).toBeLessThan(0.01);
  });
  it('of full oxide gives off all sulfur: 26.77 g, 10.2 L at 25 °C', () => {
    const { dioxide } = analyseRoast(record(93.2867, { weighing: 0.001, celsius: 1000 }));
    expect(dioxide.grams.high).toBeCloseTo(26.773, 2);
    expect(dioxide.litres.high).toBeCloseTo((26.773 / 64.058) * 24.4654, 2);
    expect(dioxide.state).toEqual({ celsius: 25, kilopascal: 101.325 });
  });
  it('says when the phases of that temperature cannot explain it', () => {
    expect(analyseRoast(record(124, { celsius: 1000 })).expected).toBeNull();
  });
  it('takes a range of purity into every range', () => {
    const ore = materialFromFormula({ id: 'o', name: 'ore' }, 'PbS', {
      share: { low: 0.85, high: 0.95 },
      gangue: formulaContent('SiO2'),
    });
    const { inert, leadOxide } = analyseRoast(record(104, { charge: [{ material: ore, amount: 100 }] }));
    expect(inert.low).toBeCloseTo(5, 6);
    expect(inert.high).toBeCloseTo(15, 6);
    expect(leadOxide.high - leadOxide.low).toBeGreaterThan(8);
  });
  it('fritted with quartz counts the quartz as it is', () => {
    const charge = [
      { material: galena, amount: 70 },
      { material: quartz, amount: 30 },
    ];
    const frit = analyseRoast(record(70 * 0.932867 + 30, { charge, weighing: 0.001 }));
    expect(frit.inert).toEqual({ low: 30, high: 30 });
    const material = roastMaterial({ id: 'f', name: 'frit' }, frit);
    expect(material.content.moles.Si! * frit.record.massOut).toBeCloseTo(30 / 60.083, 4);
  });
});

describe('what no roast can be is refused', () => {
  it.each([
    [record(140), 'at most 126.7 g, full sulfate (1.2675 g for each gram of galena); 140 g was weighed'],
    [record(80), 'at least 93.29 g, full oxide'],
    [record(105, { sulfur: { percent: 1, sigma: 0.05 } }), 'agree with the weighing, which allows 4.4'],
    [record(105, { sulfur: { percent: -1, sigma: 0.05 } }), '0 to 100 wt%'],
    [record(0), 'above zero'],
    [record(105, { weighing: -1 }), 'zero or more'],
    [record(105, { charge: [] }), 'found no line'],
    [record(105, { charge: [{ material: galena, amount: -5 }] }), 'zero or more'],
    [record(105, { charge: [{ material: quartz, amount: 105 }] }), 'lead in its charge'],
  ])('%#', (bad, words) => expect(() => analyseRoast(bad)).toThrow(words));
});

/** Common practice, no published source, but for the thermal analysis doi 10.1007/s10973-005-6785-6. */
describe('what is said of a roast agrees with the trade', () => {
  const lump = { lump: true, glitters: true, powder: 'yellow' } as const;
  it('a hard lump from 800 °C that still glitters under a yellow powder is not fully oxidised', () => {
    for (const massOut of [95, 100, 105, 115]) {
      const { verdict, steps, because } = judgeRoast(analyseRoast(record(massOut)), lump);
      expect(verdict).toBe('not fully oxidised');
      expect(steps.map((s) => s.action).slice(0, 2)).toEqual(['grind', 'roast']);
      expect(because.join(' ')).toContain('yellow powder');
    }
  });
  it('galena is ground, then heated above about 600 °C', () => {
    const { steps } = judgeRoast(analyseRoast(record(101)), lump);
    expect(steps[1]!.celsius).toEqual({ low: 600, high: 900 });
  });
  it('no advice asks for the heat that would melt galena', () => {
    const looks = [null, lump, { lump: false, glitters: false, powder: 'white' } as const];
    for (const celsius of [400, 600, 800, 1000])
      for (const look of looks)
        for (const step of judgeRoast(analyseRoast(record(100, { celsius })), look).steps) {
          expect(step.celsius?.high ?? 0).toBeLessThan(GALENA_MELTS);
          expect(step.words).not.toMatch(/melt/i);
        }
    expect(NO_MELTING_NEEDED).toMatch(/does not have to melt/);
  });
  it('at 700 to 900 °C some sulfate is always expected to stay', () => {
    for (let celsius = 700; celsius <= 899; celsius += 20)
      expect(sulfurOutlook(celsius).low).toBeGreaterThan(0);
  });
  it('one weighing without a look cannot be told from others', () => {
    expect(judgeRoast(analyseRoast(record(100)), null).verdict).toBe('cannot be told');
  });
  it('dull all through only looks oxidised where the weighing cannot exclude galena', () => {
    const dull = { lump: false, glitters: false, powder: 'yellow' } as const;
    const roast = analyseRoast(record(108));
    expect(roast.phases.find(({ formula }) => formula === 'PbS')!.percent.high).toBeGreaterThan(0.5);
    const { verdict, because, steps } = judgeRoast(roast, dull);
    expect(verdict).toBe('looks oxidised');
    expect(because.join(' ')).toContain('The weighing alone cannot exclude fine sulfide');
    expect(steps[0]!.action).toBe('read sulfur');
  });
  it('looks that the weighing forbids are called a contradiction', () => {
    const { because } = judgeRoast(analyseRoast(record(93.3, { weighing: 0.01 })), lump);
    expect(because.join(' ')).toContain('contradict each other');
  });
});

describe('a batch of raw galena', () => {
  const fire = fireAt({ celsius: 820 });
  const advise = (grams: number) =>
    adviseBatch(
      fireBatch(
        [
          { material: galena, amount: grams },
          { material: quartz, amount: 100 - grams },
        ],
        fire,
      ),
      fire,
    );
  it('lacks the roast, and adding more galena does not mend it', () => {
    for (const grams of [10, 30, 60, 90]) {
      const advice = advise(grams);
      expect(advice[0]!.what).toBe('roast missing');
      expect(advice[0]!.words).toContain('more of it gives none either');
    }
  });
  it('is never told to fire hotter until the galena melts', () => {
    const advice = advise(50);
    expect(advice.flatMap((a) => a.steps).every((s) => (s.celsius?.high ?? 0) < GALENA_MELTS)).toBe(true);
    expect(advice.find((a) => a.what === 'hotter is no cure')!.words).toBe(NO_MELTING_NEEDED);
  });
  it('with its roasted charge instead needs no further roast when no sulfide can be left', () => {
    const roasted = roastMaterial(
      { id: 'r', name: 'roast' },
      analyseRoast(record(93.2867, { weighing: 0.001 })),
    );
    const lines = [
      { material: roasted, amount: 60 },
      { material: quartz, amount: 40 },
    ];
    expect(adviseBatch(fireBatch(lines, fire), fire).map((a) => a.what)).not.toContain('roast missing');
  });
  it('roasted, but weighed once, is asked for a look at it', () => {
    const roasted = roastMaterial({ id: 'r', name: 'roast' }, analyseRoast(record(101)));
    const lines = [
      { material: roasted, amount: 60 },
      { material: quartz, amount: 40 },
    ];
    expect(adviseBatch(fireBatch(lines, fire), fire)[0]!.what).toBe('sulfide possible');
  });
  it('that brings no silica is told to', () => {
    const advice = adviseBatch(fireBatch([{ material: galena, amount: 10 }], fire), fire);
    expect(advice.map((a) => a.what)).toContain('no silica');
  });
});

describe('corners of a feasible set', () => {
  it('bound every point inside it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 4, maxLength: 4 }),
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 4, maxLength: 4 }),
        (point, row) => {
          const value = row.reduce((sum, a, i) => sum + a * point[i]!, 0);
          const total = point.reduce((a, b) => a + b, 0);
          const corners = feasibleCorners(4, [
            { row: [1, 1, 1, 1], low: total, high: total },
            { row, low: value - 1, high: value + 1 },
          ]);
          point.forEach((x, i) => {
            const { low, high } = rangeOver(
              corners,
              [0, 1, 2, 3].map((k) => Number(k === i)),
            );
            expect(x).toBeGreaterThanOrEqual(low - 1e-9);
            expect(x).toBeLessThanOrEqual(high + 1e-9);
          });
        },
      ),
    );
  });
  it('come from as many bases as the binomial coefficient says', () =>
    expect([...subsets(7, 3)]).toHaveLength(35));
  it('of nothing have no range', () =>
    expect(() => rangeOver([], [1])).toThrow('at least one feasible corner'));
});
