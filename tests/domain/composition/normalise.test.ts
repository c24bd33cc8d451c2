import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convertForm, elementOf, oxideFactor } from '../../../api/domain/chemistry/oxides.ts';
import { normaliseAnalysis } from '../../../api/domain/composition/normalise.ts';
import { expectClose } from '../../support/close.ts';
import { report, reported, settings } from './build.ts';

const normalise = (values: Readonly<Record<string, number | null>>, change = {}) =>
  normaliseAnalysis(report(values), settings(change));
const sumOf = (amounts: Readonly<Record<string, { value: number | null }>>) =>
  Object.values(amounts).reduce((sum, { value }) => sum + (value ?? 0), 0);

describe('normaliseAnalysis on reference materials', () => {
  // NIST SRM 679 brick clay, wt% element (secondary source; Hein, doi 10.1039/b109603f). Ba .0432: from memory.
  const SRM_679 = [
    reported('Al', 11.01, { uncertainty: 0.34 }),
    reported('Fe', 9.05, { uncertainty: 0.21 }),
    reported('Si', 24.34, { uncertainty: 0.3 }),
    reported('K', 2.433, { uncertainty: 0.047 }),
    ...report({ Mg: 0.7552, Ca: 0.1628, Ti: 0.577, Na: 0.1304, Mn: 0.173, P: 0.075 }),
    reported('Ba', 432, { unit: 'ppm' }),
  ];

  it('turns SRM 679 into oxides and warns of its total of 91.81', () => {
    const { amounts, rawTotal, total, warnings } = normaliseAnalysis(SRM_679, settings());
    const published = {
      Al2O3: 20.8,
      Fe2O3: 12.94,
      SiO2: 52.07,
      K2O: 2.931,
      MgO: 1.252,
      CaO: 0.2278,
      TiO2: 0.963,
    };
    for (const [oxide, wt] of Object.entries({ ...published, Na2O: 0.176, MnO: 0.223 }))
      expect(Math.abs(amounts[oxide]!.value! / wt - 1), oxide).toBeLessThan(2e-3);
    expect(rawTotal).toBeCloseTo(91.81, 2);
    expect(total.judgement).toBe('low');
    expect(warnings).toContain(total.message);
  });

  it('carries the certificate’s ± into oxides', () => {
    const { amounts } = normaliseAnalysis(SRM_679, settings());
    expectClose(amounts.Al2O3!.sigma!, 0.34 * oxideFactor('Al2O3'));
    expect(amounts.Al2O3!.sigmaBasis).toBe('stated');
    expect(amounts.MgO).toMatchObject({ sigma: null, sigmaBasis: null });
  });

  // NIST SRM 1412 multicomponent glass, wt% oxide (secondary source).
  it('finds the total of SRM 1412 usual, at 99.49', () => {
    const glass = { SiO2: 42.38, PbO: 4.4, CdO: 4.38, BaO: 4.67, SrO: 4.55, ZnO: 4.48, CaO: 4.53, K2O: 4.14 };
    const rest = { Na2O: 4.69, MgO: 4.69, Al2O3: 7.52, B2O3: 4.53, Li2O: 4.5, Fe2O3: 0.031 };
    const { rawTotal, total, warnings } = normalise({ ...glass, ...rest });
    expect(rawTotal).toBeCloseTo(99.49, 2);
    expect(total.judgement).toBe('usual');
    expect(warnings).toEqual([]);
  });

  // NIST SRM 612 (Jochum et al. 2011, secondary source), µg/g.
  it('reads traces of SRM 612 in ppm and ppb alike', () => {
    const ppm = normaliseAnalysis(report({ Pb: 38.57, Sr: 78.4 }, { unit: 'ppm' }), settings());
    const ppb = normaliseAnalysis(report({ Pb: 38_570, Sr: 78_400 }, { unit: 'ppb' }), settings());
    expectClose(ppm.amounts.PbO!.value!, 38.57e-4 * oxideFactor('PbO'));
    expectClose(ppb.amounts.PbO!.value!, ppm.amounts.PbO!.value!, { relative: 1e-12 });
  });
});

describe('normaliseAnalysis changes forms', () => {
  it.each([
    ['iron', 'FeO', 'Fe2O3'],
    ['manganese', 'Mn3O4', 'MnO'],
    ['copper', 'Cu2O', 'CuO'],
    ['lead', 'Pb3O4', 'PbO'],
    ['sulfur', 'S', 'SO3'],
  ])('of %s to %s when asked', (setting, form, usual) => {
    const { amounts } = normalise({ SiO2: 50, [usual]: 10 }, { [setting]: form });
    expectClose(amounts[form]!.value!, convertForm(10, usual, form));
    expect(amounts[usual]).toBeUndefined();
  });

  it('brings unusual oxides of other elements to the usual one', () => {
    const { amounts } = normalise({ SiO2: 50, Sb2O5: 1, Co3O4: 1 });
    expectClose(amounts.Sb2O3!.value!, convertForm(1, 'Sb2O5', 'Sb2O3'));
    expectClose(amounts.CoO!.value!, convertForm(1, 'Co3O4', 'CoO'));
  });

  it('adds FeO to Fe2O3 in the iron chosen, in a step of its own', () => {
    const { amounts, steps } = normalise({ SiO2: 60, FeO: 2, Fe2O3: 5 });
    expectClose(amounts.Fe2O3!.value!, 5 + convertForm(2, 'FeO', 'Fe2O3'));
    const added = steps.filter(({ what }) => what.startsWith('added to'));
    expect(added).toHaveLength(1);
    expectClose(added[0]!.after!, amounts.Fe2O3!.value!);
  });

  it('counts one term below detection as nothing and says so', () => {
    const { amounts, warnings } = normaliseAnalysis(
      [...report({ SiO2: 60, Fe2O3: 5 }), reported('FeO', null, { limit: 0.1 })],
      settings(),
    );
    expect(amounts.Fe2O3!.value).toBe(5);
    expect(warnings.join()).toContain('one term is below detection');
  });

  it.each([
    [{ Fe: 3, Fe2O3: 4 }, 'found both Fe and Fe2O3'],
    [{ PbO: 40, Pb: 37 }, 'found both PbO and Pb'],
    [{ FeO: 9, Fe2O3: 10.002 }, 'one iron written twice'],
    [{ SiO2: null }, 'closure needs an oxide above detection'],
    [{}, 'closure needs an oxide above detection'],
    [{ O: 50 }, 'closure needs an oxide above detection'],
  ])('refuses %j', (values, words) => {
    expect(() => normalise(values)).toThrow(words);
  });

  it('only warns of one iron written twice where rounding leaves room for chance', () => {
    const coarse = report({ SiO2: 60, FeO: 0.8, Fe2O3: 0.9 }, { resolution: 0.1 });
    expect(normaliseAnalysis(coarse, settings()).warnings.join()).toContain('may be one iron written twice');
    const exact = report({ SiO2: 60, FeO: 0.9, Fe2O3: 1 }, { resolution: 0.1 });
    expect(normaliseAnalysis(exact, settings()).warnings.join()).toContain('may be one iron written twice');
    const other = report({ SiO2: 60, FeO: 4, Fe2O3: 2 }, { resolution: 0.1 });
    expect(normaliseAnalysis(other, settings()).warnings.join()).not.toContain('iron');
  });
});

describe('normaliseAnalysis takes volatiles out', () => {
  const fired = { SiO2: 57, Al2O3: 18, PbO: 20, LOI: 4 };

  it('by 100·oxide/(total − LOI)', () => {
    const { closed, rawTotal } = normalise(fired);
    expect(rawTotal).toBe(99);
    expectClose(closed.PbO!.value!, (100 * 20) / (99 - 4));
    expect(closed.LOI).toBeUndefined();
    expect(normalise(fired).amounts.LOI!.value).toBe(4);
  });

  it('only when asked', () => {
    const { closed } = normalise(fired, { volatileFree: false });
    expectClose(closed.LOI!.value!, 400 / 99);
    expectClose(sumOf(closed), 100);
  });

  it('counts H2O and CO2 inside LOI, but keeps them where LOI is not given', () => {
    const both = normalise({ ...fired, H2O: 3, CO2: 1 });
    expect(both.rawTotal).toBe(99);
    expect(both.warnings.join()).toContain('H2O and CO2 taken as part of LOI');
    const { LOI: _, ...rest } = fired;
    const alone = normalise({ ...rest, H2O: 3, CO2: 1 });
    expect(alone.rawTotal).toBe(99);
    expect(alone.closed.H2O).toBeUndefined();
    expectClose(alone.closed.PbO!.value!, (100 * 20) / 95);
  });

  it('leaves a gain on ignition out of the parts but in the total', () => {
    const { rawTotal, closed, warnings } = normalise(
      { SiO2: 60, PbO: 40, LOI: -0.5 },
      { volatileFree: false },
    );
    expect(rawTotal).toBe(99.5);
    expect(closed.LOI).toBeUndefined();
    expect(warnings.join()).toContain('a gain on ignition');
  });
});

describe('normaliseAnalysis reads oxygen, carbon and atom %', () => {
  it('leaves oxygen out beside wt% elements and says how much the oxides hold', () => {
    // Quartz by mass: 46.74 Si, 53.26 O.
    const { amounts, rawTotal, warnings } = normalise({ Si: 46.74, O: 53.26 });
    expect(Object.keys(amounts)).toEqual(['SiO2']);
    expect(rawTotal).toBeCloseTo(100, 1);
    expect(warnings).toEqual(['Oxygen (53.26 wt%) is left out: the oxides bring their own (53.25 wt%).']);
  });

  it('reckons the oxygen of oxides already given', () => {
    const { warnings } = normalise({ SiO2: 60, Fe: 28, O: 10 });
    // Quartz is 53.256 % oxygen, Fe2O3 42.97 % of its iron.
    expect(warnings[0]).toContain('the oxides bring their own (43.99 wt%)');
  });

  it('keeps CO2 out of the oxides without calling it a coating', () => {
    const { amounts, warnings } = normalise({ SiO2: 95, CO2: 4 });
    expect(amounts.CO2!.value).toBe(4);
    expect(warnings).toEqual([]);
  });

  it('leaves a carbon and gold coating out', () => {
    const { amounts, warnings } = normalise({ SiO2: 95, C: 3, Au: 1 });
    expect(Object.keys(amounts)).toEqual(['SiO2']);
    expect(warnings.join()).toContain('C, Au left out');
  });

  const atoms = (values: Readonly<Record<string, number>>) =>
    normaliseAnalysis(report(values, { unit: 'at%', uncertainty: 0.2, basis: '2σ' }), settings());

  it('turns atom % of an ideal feldspar into its oxides, with or without oxygen', () => {
    // KAlSi3O8: K2O 16.92, Al2O3 18.32, SiO2 64.76 wt% (from its formula).
    const withOxygen = atoms({ K: 100 / 13, Al: 100 / 13, Si: 300 / 13, O: 800 / 13 });
    const without = atoms({ K: 20, Al: 20, Si: 60 });
    for (const { closed, total } of [withOxygen, without]) {
      expect(closed.K2O!.value).toBeCloseTo(16.92, 2);
      expect(closed.Al2O3!.value).toBeCloseTo(18.32, 2);
      expect(closed.SiO2!.value).toBeCloseTo(64.76, 2);
      expect(total.judgement).toBe('unknown');
    }
    expect(without.warnings).toContain(without.total.message);
    expect(without.rawTotal).toBeCloseTo(100, 10);
    expectClose(without.closed.SiO2!.sigma!, (0.1 / 60) * without.closed.SiO2!.value!);
  });

  it('takes no total in atom % for one in mass', () => {
    const values = report({ K: 20, Al: 20, Si: 60 }, { unit: 'at%' });
    for (const total of [reported('Total', 100, { unit: 'at%' }), reported('Total', 62)]) {
      const { rawTotal, warnings } = normaliseAnalysis([...values, total], settings());
      expect(rawTotal).toBeCloseTo(100, 10);
      expect(warnings).toHaveLength(1);
    }
  });

  it('refuses atom % with nothing detected', () => {
    expect(() => normaliseAnalysis([reported('Si', null, { unit: 'at%' })], settings())).toThrow(
      'atom % needs an element above detection',
    );
  });
});

describe('normaliseAnalysis carries what is known of each figure', () => {
  it('below detection stays so, with its limit in the same oxide and closure', () => {
    const { closed } = normaliseAnalysis(
      [...report({ SiO2: 50, PbO: 30 }), reported('Sn', null, { limit: 100, unit: 'ppm' })],
      settings(),
    );
    expect(closed.SnO2!.value).toBeNull();
    expectClose(closed.SnO2!.limit!, 0.01 * oxideFactor('SnO2') * (100 / 80));
  });

  it('fills unstated uncertainties only where a relative error is given, and says so', () => {
    const values = [...report({ CuO: null, SiO2: 50 }), reported('PbO', 50, { uncertainty: 1, basis: '2σ' })];
    expect(normaliseAnalysis(values, settings()).amounts.SiO2!.sigma).toBeNull();
    const { amounts, warnings } = normaliseAnalysis(values, settings(), { relativeError: 0.03 });
    expect(amounts.SiO2).toMatchObject({ sigma: 1.5, sigmaBasis: 'assumed' });
    expect(amounts.PbO).toMatchObject({ sigma: 0.5, sigmaBasis: 'stated' });
    expect(amounts.CuO!.sigma).toBeNull();
    expect(Object.keys(amounts)).toEqual(['SiO2', 'PbO', 'CuO']);
    expect(warnings).toEqual([
      'No uncertainty is stated for SiO2; 3 % is assumed (common practice, no published source).',
    ]);
  });

  it('each step leads to the next, from the figure reported to the figure closed', () => {
    const { steps, closed } = normaliseAnalysis(
      [reported('Pb', 300_000, { unit: 'ppm' }), ...report({ SiO2: 55, Al2O3: 10, LOI: 1 })],
      settings(),
    );
    const lead = steps.filter(({ analyte, oxide }) => analyte === 'Pb' || oxide === 'PbO');
    expect(lead.map(({ before, factor, after }) => after! / (before.value! * factor))).toEqual([1, 1, 1]);
    expect(lead.map(({ before }) => before.value).slice(1)).toEqual(
      lead.map(({ after }) => after).slice(0, -1),
    );
    expect(lead.at(-1)!.after).toBe(closed.PbO!.value);
    expect(lead.map(({ what }) => what)).toEqual([
      'ppm to wt%',
      'Pb as PbO, IUPAC 2021 atomic weights',
      'volatile-free, closed to 100: 100 / 97.32',
    ]);
  });

  it('warns when the laboratory’s total is not the sum', () => {
    const { warnings } = normalise({ SiO2: 60, PbO: 39, Total: 93.2 });
    expect(warnings.join()).toContain("The laboratory's total is 93.2, the values here sum to 99");
  });
});

describe('normaliseAnalysis keeps its invariants', () => {
  const oxides = ['SiO2', 'Al2O3', 'Fe2O3', 'PbO', 'MnO', 'CaO', 'K2O', 'Na2O', 'CuO', 'SO3', 'P2O5'];
  const analysis = fc.dictionary(fc.constantFrom(...oxides), fc.double({ min: 1e-4, max: 90, noNaN: true }), {
    minKeys: 2,
  });
  const wanted = fc.record({
    iron: fc.constantFrom('Fe2O3' as const, 'FeO' as const),
    manganese: fc.constantFrom('MnO' as const, 'Mn3O4' as const, 'MnO2' as const),
    copper: fc.constantFrom('CuO' as const, 'Cu2O' as const),
    lead: fc.constantFrom('PbO' as const, 'PbO2' as const),
    sulfur: fc.constantFrom('SO3' as const, 'S' as const),
    volatileFree: fc.boolean(),
  });
  const elementMass = (amounts: Readonly<Record<string, { value: number | null }>>): Record<string, number> =>
    Object.fromEntries(
      Object.entries(amounts).map(([oxide, { value }]) => [elementOf(oxide), value! / oxideFactor(oxide)]),
    );

  it('holds the mass of every element, whatever forms are chosen', () => {
    fc.assert(
      fc.property(analysis, wanted, (values, choice) => {
        const before = elementMass(
          Object.fromEntries(Object.entries(values).map(([k, value]) => [k, { value }])),
        );
        const after = elementMass(normalise(values, choice).amounts);
        expect(Object.keys(after).sort()).toEqual(Object.keys(before).sort());
        for (const [element, mass] of Object.entries(before)) expectClose(after[element]!, mass!);
      }),
    );
  });

  it('closes to 100 and gives the same closed amounts for oxides, elements, ppm, and a diluted specimen', () => {
    fc.assert(
      fc.property(
        analysis,
        wanted,
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        (values, choice, share) => {
          const { closed } = normalise(values, choice);
          expectClose(sumOf(closed), 100);
          const asElements = Object.fromEntries(
            Object.entries(values).map(([k, x]) => [elementOf(k)!, x / oxideFactor(k)]),
          );
          const scaled = Object.fromEntries(Object.entries(asElements).map(([k, x]) => [k, x * 1e4 * share]));
          const others = [
            normalise(asElements, choice),
            normaliseAnalysis(report(scaled, { unit: 'ppm' }), settings(choice)),
          ];
          for (const other of others)
            for (const [oxide, amount] of Object.entries(closed))
              expectClose(other.closed[oxide]!.value!, amount.value!, { relative: 1e-8 });
        },
      ),
    );
  });

  it('leaves an analysis that is closed already as it is', () => {
    fc.assert(
      fc.property(analysis, wanted, (values, choice) => {
        const { closed } = normalise(values, choice);
        const again = normalise(
          Object.fromEntries(Object.entries(closed).map(([k, a]) => [k, a.value])),
          choice,
        );
        for (const [oxide, { value }] of Object.entries(closed))
          expectClose(again.closed[oxide]!.value!, value!);
      }),
    );
  });
});
