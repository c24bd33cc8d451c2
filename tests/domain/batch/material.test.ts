import { describe, expect, it } from 'vitest';
import { contentMass, formulaContent } from '../../../api/domain/batch/content.ts';
import { materialFromAnalysis, materialFromFormula } from '../../../api/domain/batch/material.ts';
import { cautionsFor, FIRST_RULE, NOT_FOR_FOOD } from '../../../api/domain/batch/safety.ts';
import { starterShelf } from '../../../api/domain/batch/shelf.ts';
import { HAZARDS } from '../../../api/domain/batch/types.ts';

const NAMED = [
  ...['galena', 'cerussite', 'hydrocerussite', 'litharge', 'minium', 'anglesite', 'pyrolusite', 'manganite'],
  ...[
    'hausmannite',
    'malachite',
    'azurite',
    'cuprite',
    'tenorite',
    'hematite',
    'goethite',
    'magnetite',
    'quartz',
  ],
  ...['kaolinite', 'potash-feldspar', 'soda-feldspar', 'calcite', 'dolomite', 'talc', 'wood-ash', 'red-clay'],
];

describe('the starter shelf', () => {
  const shelf = starterShelf();
  it('holds what a potter of painted ware starts from, each once', () => {
    expect(shelf.map((m) => m.id)).toEqual(NAMED);
  });
  it('accounts for every gram of each', () => {
    for (const material of shelf) expect(contentMass(material.content)).toBeCloseTo(1, 12);
  });
  it('warns of lead and says how to handle it wherever lead is', () => {
    for (const material of shelf.filter((m) => m.content.moles.Pb)) {
      expect(material.hazards).toContain('lead');
      expect(material.handling).toMatch(/fitted respirator/);
    }
  });
  it('names the published analysis of its wood ash, as the Phyllis database entry 308 gives it', () => {
    const ash = shelf.find((m) => m.id === 'wood-ash')!;
    expect(ash.source).toContain('Osman');
    expect(ash.origin.kind === 'analysis' && ash.origin.total).toBeCloseTo(78.87, 8);
    expect(ash.warnings.join(' ')).toContain('78.87');
  });
  /** Oxide total 91.81 with P2O5 and BaO [computed from the certificate]; BaO is not among the values used. */
  it('says that its clay is a reference material whose total is low', () => {
    const clay = shelf.find((m) => m.id === 'red-clay')!;
    expect(clay.source).toContain('standing in');
    expect(clay.origin.kind === 'analysis' && clay.origin.total).toBeCloseTo(91.75, 1);
    expect(clay.warnings.join(' ')).toContain('may stay or go');
    expect(clay.warnings.join(' ')).toContain('no loss on ignition');
  });
});

describe('a material of the user', () => {
  it('keeps a range of purity as its spread, the rest being gangue', () => {
    const galena = materialFromFormula({ id: 'g', name: 'ore' }, 'PbS', {
      share: { low: 0.85, high: 0.95 },
      gangue: formulaContent('SiO2'),
    });
    expect(galena.content.moles.Pb).toBeCloseTo(0.9 / 239.26, 6);
    expect(galena.spread!.low.moles.Si).toBeCloseTo(0.15 / 60.083, 6);
  });
  it('comes from an analysis with its standard deviations', () => {
    const clay = materialFromAnalysis(
      { id: 'c', name: 'clay' },
      { values: { SiO2: 60, Al2O3: 30 }, lossOnIgnition: 10, sigma: { SiO2: 0.6 } },
    );
    expect(clay.sigma.Si! / clay.content.moles.Si!).toBeCloseTo(0.01, 6);
  });
  it.each([
    [() => materialFromFormula({ id: 'x', name: 'x' }, 'PbS', { share: 0, gangue: null }), 'above 0'],
    [() => materialFromFormula({ id: 'x', name: 'x', pricePerKg: -1 }, 'PbS'), 'zero or more'],
    [() => materialFromFormula({ id: 'x', name: 'x' }, '(Mg,Fe)2SiO4'), 'write each share'],
  ])('is refused where it cannot be', (make, words) => expect(make).toThrow(words));
});

describe('cautions', () => {
  const all = cautionsFor(HAZARDS);
  it('exist for every hazard', () => {
    expect(new Set(all.map((c) => c.hazard))).toEqual(new Set(HAZARDS));
  });
  it('carry a dated source wherever they carry a figure of a rule', () => {
    for (const caution of all.filter((c) => /µg|ppm/.test(c.text))) {
      expect(caution.source?.title).toMatch(/OSHA|CDC|NIOSH|CFR/);
      expect(caution.source?.checked).toMatch(/^20\d\d-\d\d-\d\d$/);
    }
    expect(all.filter((c) => c.source).length).toBeGreaterThan(2);
  });
  /** Figures of OSHA 29 CFR 1910.1025 and of the OSHA and NIOSH limits for sulfur dioxide. */
  it('give the limits of lead and sulfur dioxide', () => {
    const text = all.map((c) => c.text).join(' ');
    expect(text).toContain('50 µg/m³');
    expect(text).toContain('30 µg/m³');
    expect(text).toContain('2 ppm');
    expect(text).toContain('100 ppm');
  });
  it('put local codes first, and never call ware safe', () => {
    expect(FIRST_RULE).toMatch(/Local codes and licensed practice come first/);
    expect(NOT_FOR_FOOD).toMatch(/^Not for food use/);
    expect(cautionsFor(['lead'])[0]!.text).toBe(NOT_FOR_FOOD);
    for (const text of [FIRST_RULE, ...all.map((c) => c.text)])
      expect(text).not.toMatch(/food[- ]safe|is safe|are safe/);
  });
});
