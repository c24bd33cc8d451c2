import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fireBatch } from '../../../api/domain/batch/batch.ts';
import { fireAt } from '../../../api/domain/batch/fire.ts';
import { materialFromFormula } from '../../../api/domain/batch/material.ts';
import { walkFromPercent } from '../../../api/domain/batch/percent-walk.ts';
import type { PublishedLine } from '../../../api/domain/batch/published-line.ts';

const line: PublishedLine = {
  values: { PbO: 45, SiO2: 35, Al2O3: 8, Fe2O3: 5, MnO: 4, K2O: 3 },
  slip: null,
  grams: 100,
  galenaPurity: 1,
  celsius: 850,
};
const choice = (formula: string, of = line) =>
  walkFromPercent(of).choices.find((c) => c.formula === formula)!.grams;

describe('the walk from a percentage to grams', () => {
  it('takes each step from where the last ended', () => {
    const slip = { share: 0.2, values: { SiO2: 60, Al2O3: 25, Fe2O3: 12, K2O: 3 } };
    const { steps } = walkFromPercent({ ...line, slip, galenaPurity: 0.9 });
    for (let i = 1; i < 5; i++) expect(steps[i]!.before.value).toBeCloseTo(steps[i - 1]!.after.value, 10);
    for (const { factor, before, after } of steps)
      if (factor !== null) expect(before.value * factor).toBeCloseTo(after.value, 10);
    expect(steps.map((s) => s.title)).toContain('Slip drawn off');
  });
  /** PbO per PbS .9329, per PbCO3 .8353, per Pb3O4 .9767, per hydrocerussite .8633, per PbSO4 .7360, computed outside this code from IUPAC 2021 weights. */
  it.each([
    ['PbS', 0.9329],
    ['PbCO3', 0.8353],
    ['PbO', 1],
    ['Pb3O4', 0.9767],
    ['2PbCO3·Pb(OH)2', 0.8633],
    ['PbSO4', 0.736],
  ])('45 g of PbO take 45 / factor g of %s', (formula, factor) => {
    expect(Math.abs(choice(formula) / (45 / factor) - 1)).toBeLessThan(1e-4);
  });
  it('reads 10 % lead as element otherwise than as oxide', () => {
    const rest = { SiO2: 60, Al2O3: 20, Fe2O3: 10 };
    const [element, oxide] = [
      { Pb: 10, ...rest },
      { PbO: 10, ...rest },
    ].map((values) => choice('PbO', { ...line, values }));
    expect(element! / oxide!).toBeCloseTo((1.07722 * 100) / 100.7722, 4);
  });
  it('asks for more of an impure ore, and for more once slip is drawn off', () => {
    expect(choice('PbS', { ...line, galenaPurity: 0.8 })).toBeCloseTo(choice('PbS') / 0.8, 8);
    const slip = { share: 0.25, values: { SiO2: 70, Al2O3: 30 } };
    expect(choice('PbO', { ...line, slip })).toBeCloseTo(60, 8);
  });
  it('ends at grams that fire to what was wanted', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 80 }),
        fc.constantFrom('PbO', 'PbCO3', 'Pb3O4', '2PbCO3·Pb(OH)2'),
        (lead, formula) => {
          const of = { ...line, values: { PbO: lead, SiO2: 100 - lead } };
          const batch = [
            {
              material: materialFromFormula({ id: 'l', name: 'lead' }, formula),
              amount: choice(formula, of),
            },
            { material: materialFromFormula({ id: 'q', name: 'quartz' }, 'SiO2'), amount: 100 - lead },
          ];
          const fired = fireBatch(batch, fireAt({ celsius: 850 }));
          expect(fired.totals.fired).toBeCloseTo(100, 8);
          expect(fired.oxides.find((o) => o.oxide === 'PbO')!.percent).toBeCloseTo(lead, 8);
        },
      ),
    );
  });
  it('takes a line of which little was printed as it stands, and closes one of which nearly all was', () => {
    const alone = walkFromPercent({ ...line, values: { Pb: 10 } });
    const step = alone.steps[1]!;
    // 10 wt% of lead is 10.7722 wt% of PbO (IUPAC 2021 weights, computed outside this code).
    expect(step.after.value).toBeCloseTo(10.7722, 3);
    expect(step.factor).toBe(1);
    expect(step.words).toContain('sum to 10.8 wt%: the rest of the paint was not printed');
    expect(alone.choices.find(({ formula }) => formula === 'PbO')!.grams).toBeCloseTo(10.7722, 3);
    const nearly = walkFromPercent({ ...line, values: { PbO: 45, SiO2: 50 } }).steps[1]!;
    expect(nearly.after.value).toBeCloseTo((100 * 45) / 95, 10);
    expect(nearly.words).toContain('sum to 95.0 wt%, not 100');
  });
  it('ignores water in the published line', () => {
    expect(choice('PbO', { ...line, values: { ...line.values, H2O: 5 } })).toBeCloseTo(choice('PbO'), 10);
  });
  /** Common practice, no published source: copied percentages, or more raw galena still, gave no glaze. */
  it('says that copied percentages lack the roast, and that more raw galena does not help', () => {
    const { copied } = walkFromPercent({ ...line, values: { Pb: 10, SiO2: 60, Al2O3: 20, Fe2O3: 10 } });
    expect(copied.galena).toBe(10);
    expect(copied.leadOxide).toBeLessThan(10);
    expect(copied.words).toContain('without the roast it does not glaze, and more raw galena does not help');
  });
  it.each([
    [{ values: { SiO2: 60 } }, 'a lead figure'],
    [{ values: { PbO: 100, SiO2: 80 } }, 'at most 110'],
    [{ values: { PbO: -4 } }, 'zero or more'],
    [{ values: { Glaze: 4 } }, 'oxides or elements'],
    [{ values: { PbO: 30, Pb: 10, SiO2: 40 } }, 'needs each element once; PbO and Pb are both Pb'],
    [
      { slip: { share: 0.1, values: { FeO: 2, Fe2O3: 3, SiO2: 95 } } },
      'needs each element once; FeO and Fe2O3 are both Fe',
    ],
    [{ slip: { share: 1, values: { SiO2: 100 } } }, '0 to below 1'],
    [{ slip: { share: 0.5, values: { PbO: 99, SiO2: 1 } } }, 'leaves'],
    [{ slip: { share: 0.7, values: { SiO2: 100 } } }, 'between 0 and 100'],
    [{ grams: 0 }, 'grams of paint above zero'],
    [{ galenaPurity: 0 }, 'above 0 and up to 1'],
  ])('refuses %j', (change, words) => {
    expect(() => walkFromPercent({ ...line, ...(change as Partial<PublishedLine>) })).toThrow(words);
  });
});
