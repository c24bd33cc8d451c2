import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analysisContent } from '../../../api/domain/batch/analysis-content.ts';
import { contentMass, formulaContent, massFactor, mixContents } from '../../../api/domain/batch/content.ts';
import { fireAt, fireContent } from '../../../api/domain/batch/fire.ts';
import { firedForm, formsInFire } from '../../../api/domain/batch/fired-forms.ts';
import { GASES } from '../../../api/domain/batch/types.ts';

const FORMULAS = [
  'PbS',
  'PbSO4',
  '2PbCO3·Pb(OH)2',
  'Pb3O4',
  'MnO(OH)',
  'CaSO4·2H2O',
  'KAlSi3O8',
  'FeS2',
  'NaCl',
  'FeO',
];

describe('stoichiometry agrees with published factors', () => {
  /** An XRF laboratory's oxide conversion table, 2021: CaO × 1.7848 = CaCO3 (older weights, so 3e-4). */
  it('CaO to CaCO3 of a published conversion table', () => {
    expect(Math.abs(massFactor('CaO', 'CaCO3', 'Ca') / 1.7848 - 1)).toBeLessThan(3e-4);
  });
  /** Computed from IUPAC 2021 atomic weights outside this code, to four figures. */
  it.each([
    ['PbS', 'PbO', 'Pb', 0.9329],
    ['PbS', 'PbSO4', 'Pb', 1.2675],
    ['PbS', 'PbO·PbSO4', 'Pb', 1.1002],
    ['PbS', '2PbO·PbSO4', 'Pb', 1.0444],
    ['PbS', '4PbO·PbSO4', 'Pb', 0.9998],
    ['PbS', 'SO2', 'S', 0.2677],
    ['PbCO3', 'PbO', 'Pb', 0.8353],
    ['Pb3O4', 'PbO', 'Pb', 0.9767],
    ['2PbCO3·Pb(OH)2', 'PbO', 'Pb', 0.8633],
    ['PbSO4', 'PbO', 'Pb', 0.736],
    ['MnO2', 'Mn2O3', 'Mn', 0.908],
    ['MnO2', 'Mn3O4', 'Mn', 0.8773],
    ['MnO2', 'MnO', 'Mn', 0.816],
    ['Cu2CO3(OH)2', 'CuO', 'Cu', 0.7195],
    ['Cu3(CO3)2(OH)2', 'CuO', 'Cu', 0.6924],
    ['FeO(OH)', 'Fe2O3', 'Fe', 0.8986],
  ])('one gram of %s makes %s', (from, to, element, factor) => {
    expect(Math.abs(massFactor(from, to, element) - factor)).toBeLessThanOrEqual(6e-5);
  });
  it.each([
    ['Al2Si2O5(OH)4', 13.96],
    ['CaCO3', 43.97],
    ['FeO(OH)', 10.14],
  ])('%s loses %f wt%% on ignition', (formula, loss) => {
    const { oxides } = fireContent(formulaContent(formula), fireAt({ celsius: 1000 }));
    const lost = 100 * (1 - Object.values(oxides).reduce((sum, g) => sum + g, 0));
    expect(Math.abs(lost - loss)).toBeLessThanOrEqual(0.006);
  });
});

describe('no mass is made or lost', () => {
  const content = fc.oneof(
    fc.constantFrom(...FORMULAS).map((f) => formulaContent(f)),
    fc
      .record({
        SiO2: fc.integer({ min: 0, max: 60 }),
        CaO: fc.integer({ min: 0, max: 15 }),
        SO3: fc.integer({ min: 0, max: 5 }),
        PbO: fc.integer({ min: 1, max: 10 }),
      })
      .map((values) => analysisContent({ values, lossOnIgnition: 7 }).content),
  );
  it('in reading a material', () => {
    fc.assert(
      fc.property(content, (c) => {
        expect(contentMass(c)).toBeCloseTo(1, 12);
      }),
    );
  });
  it('in firing it, at any temperature, air and sulfur kept', () => {
    const fire = fc.record({
      celsius: fc.integer({ min: 20, max: 1300 }),
      atmosphere: fc.constantFrom('air' as const, 'smoke' as const),
    });
    fc.assert(
      fc.property(
        content,
        fire,
        fc.constantFrom('low' as const, 'central' as const, 'high' as const),
        (c, f, level) => {
          const y = fireContent(c, fireAt(f), level);
          const solids = Object.values(y.oxides).reduce((sum, g) => sum + g, 0);
          const gases = GASES.reduce((sum, gas) => sum + y.gases[gas], 0);
          expect(solids + gases + y.unreported).toBeCloseTo(1, 12);
        },
      ),
    );
  });
  it('in mixing shares that sum to one', () => {
    fc.assert(
      fc.property(content, content, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, share) => {
        const mix = mixContents([
          { content: a, share },
          { content: b, share: 1 - share },
        ]);
        expect(contentMass(mix)).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('the fire decides what stays', () => {
  it('takes oxygen from the air to roast a sulfide', () => {
    expect(fireContent(formulaContent('PbS'), fireAt({ celsius: 1000 })).gases.O2).toBeLessThan(0);
  });
  it('keeps sulfate at 700 to 900 °C, as thermal analysis of galena shows', () => {
    for (const celsius of [700, 800, 899])
      expect(fireContent(formulaContent('PbS'), fireAt({ celsius }), 'low').kept.S).toBeGreaterThan(0);
  });
  it('lets sulfide survive at the high end', () => {
    const { kept } = fireContent(formulaContent('PbS'), fireAt({ celsius: 850 }), 'high');
    expect(kept.S).toBeCloseTo(kept.Pb!, 12);
  });
  /** MnO2 → Mn2O3 near 570 °C, Mn2O3 → Mn3O4 near 990 °C in air: Mater. Trans. JIM 22:4. */
  it('takes manganese down step by step', () => {
    expect([500, 600, 1000].map((t) => formsInFire(t, 'air').Mn)).toEqual(['MnO2', 'Mn2O3', 'Mn3O4']);
  });
  it('keeps the sulfate of lime, and not that of iron', () => {
    expect(fireContent(formulaContent('CaSO4'), fireAt({ celsius: 900 })).gases.SO2).toBe(0);
    expect(fireContent(formulaContent('FeSO4'), fireAt({ celsius: 900 })).gases.SO2).toBeGreaterThan(0.4);
  });
});

describe('what cannot be a material is refused', () => {
  it('a formula with no such element', () => expect(() => formulaContent('PbQ')).toThrow('Q'));
  it('an element that leaves nothing known', () =>
    expect(() => firedForm('Ne', {})).toThrow('neither an oxide nor a gas'));
  it('a temperature no fire has', () => expect(() => fireAt({ celsius: 5000 })).toThrow('0 to 1400'));
  it('a negative share', () =>
    expect(() => mixContents([{ content: formulaContent('PbS'), share: -1 }])).toThrow('zero or more'));
});

describe('an analysis becomes a material', () => {
  it('as the same oxides when fired', () => {
    const values = { SiO2: 55, Al2O3: 20, Fe2O3: 10, K2O: 3 };
    const { content } = analysisContent({ values, lossOnIgnition: 12 });
    const { oxides, gases } = fireContent(content, fireAt({ celsius: 900 }));
    for (const [oxide, wt] of Object.entries(values)) expect(oxides[oxide]).toBeCloseTo(wt / 100, 12);
    expect(gases.other).toBeCloseTo(0.12, 12);
  });
  it('with an element read as its usual oxide', () => {
    const asElement = analysisContent({ values: { Si: 30 }, lossOnIgnition: null });
    const asOxide = analysisContent({
      values: { SiO2: 30 * massFactor('Si', 'SiO2', 'Si') },
      lossOnIgnition: null,
    });
    expect(asElement.content.moles.O).toBeCloseTo(asOxide.content.moles.O!, 12);
  });
  it('with S read as sulfide: pure galena by elements is galena', () => {
    const { content, total } = analysisContent({ values: { Pb: 86.6003, S: 13.3997 }, lossOnIgnition: null });
    expect(total).toBeCloseTo(100, 3);
    expect(content.moles.O).toBeCloseTo(0, 5);
  });
  it('with sulfur beyond what oxygen it could replace, as in pyrite', () => {
    const { content, total } = analysisContent({ values: { Fe: 46.55, S: 53.45 }, lossOnIgnition: null });
    expect(total).toBeCloseTo(100, 6);
    expect(content.moles.S! / content.moles.Fe!).toBeCloseTo(2, 2);
  });
  it('with what is missing kept apart, and said', () => {
    const { content, warnings } = analysisContent({ values: { SiO2: 60 }, lossOnIgnition: 10 });
    expect(content.unreported).toBeCloseTo(0.3, 12);
    expect(warnings.join(' ')).toContain('sums to 70 wt%');
  });
  it.each([
    [{ SiO2: -1 }, null, 'zero or more'],
    [{ Fe: 1, Fe2O3: 2 }, null, 'each element once'],
    [{ SiO2: 100, Al2O3: 80 }, null, 'found 180'],
    [{ SiO2: 90, H2O: 8 }, 5, 'hold its water'],
    [{ SiO2: 90 }, -3, 'loss on ignition needs'],
    [{ Colour: 3 }, null, 'oxides or elements'],
    [{ SO3: 1, S: 30 }, null, 'each element once'],
  ])('unless it cannot be one: %j', (values, lossOnIgnition, words) => {
    expect(() => analysisContent({ values: values as Record<string, number>, lossOnIgnition })).toThrow(
      words,
    );
  });
});
