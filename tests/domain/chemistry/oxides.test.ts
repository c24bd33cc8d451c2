import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ATOMIC_WEIGHTS } from '../../../api/domain/chemistry/atomic-weights.ts';
import { molarMass } from '../../../api/domain/chemistry/formula.ts';
import {
  byDisplayOrder,
  convertForm,
  elementOf,
  OXIDES,
  oxideFactor,
  oxideFactorInterval,
} from '../../../api/domain/chemistry/oxides.ts';

describe('oxide factors', () => {
  // An XRF laboratory's published oxide conversion table (2021); older atomic weights, hence 3e-4 relative.
  it.each([
    ['SiO2', 2.1395],
    ['TiO2', 1.6681],
    ['Al2O3', 1.8893],
    ['Fe2O3', 1.4298],
    ['FeO', 1.2865],
    ['MnO', 1.2912],
    ['Mn3O4', 1.3883],
    ['MnO2', 1.5825],
    ['MgO', 1.6581],
    ['CaO', 1.3992],
    ['Na2O', 1.3479],
    ['K2O', 1.2045],
    ['P2O5', 2.2915],
  ])('%s agrees with a published conversion table', (oxide, published) => {
    expect(Math.abs(oxideFactor(oxide) / published - 1)).toBeLessThan(3e-4);
  });

  it('turn 56.0 % CaO into the 99.94 % CaCO3 of the same table', () => {
    expect(Math.abs((56 * molarMass('CaCO3')) / molarMass('CaO') / 99.94 - 1)).toBeLessThan(3e-4);
  });

  // Worked out by hand from IUPAC 2021 weights (doi 10.1515/pac-2019-0603), four decimals.
  it.each(
    Object.entries({
      ...{ Na2O: 1.348, MgO: 1.6583, Al2O3: 1.8894, SiO2: 2.1393, P2O5: 2.2913, SO3: 2.4971, K2O: 1.2046 },
      ...{ CaO: 1.3992, TiO2: 1.6685, V2O5: 1.7852, Cr2O3: 1.4615, MnO: 1.2912, MnO2: 1.5824, Mn2O3: 1.4368 },
      ...{ Mn3O4: 1.3883, FeO: 1.2865, Fe2O3: 1.4297, CoO: 1.2715, NiO: 1.2726, CuO: 1.2518, Cu2O: 1.1259 },
      ...{ ZnO: 1.2447, As2O3: 1.3203, Rb2O: 1.0936, SrO: 1.1826, ZrO2: 1.3508, Ag2O: 1.0742, SnO2: 1.2695 },
      ...{ Sb2O3: 1.1971, BaO: 1.1165, CeO2: 1.2284, PbO: 1.0772, PbO2: 1.1544, Pb3O4: 1.103, Bi2O3: 1.1148 },
      ...{ B2O3: 3.22, Li2O: 2.1527 },
    }),
  )('%s follows from IUPAC 2021 weights', (oxide, expected) => {
    expect(Math.abs(oxideFactor(oxide) - expected)).toBeLessThan(0.5001e-4);
  });

  it('turn total FeO into total Fe2O3 as the Geological Survey of Canada does (1.1113)', () => {
    expect(convertForm(1, 'FeO', 'Fe2O3')).toBeCloseTo(1.1113, 3);
  });

  it('of PbO move by 0.06 % with the ore that the lead came from', () => {
    const [low, high] = oxideFactorInterval('PbO');
    expect(low).toBeCloseTo(1.07694, 5);
    expect(high).toBeCloseTo(1.07761, 5);
    expect(oxideFactorInterval('SnO2')).toEqual([oxideFactor('SnO2'), oxideFactor('SnO2')]);
  });

  it('refuse what is no oxide of one element', () => {
    for (const text of ['LOI', 'Total', 'PbSO4', 'O2', 'sio2', '', 'XxO'])
      expect(() => oxideFactor(text), text).toThrow('an element or a simple oxide');
    expect(() => convertForm(1, 'FeO', 'MnO')).toThrow('two forms of one element; found FeO and MnO');
  });
});

describe('forms of one element', () => {
  const pairs = OXIDES.flatMap((a) =>
    OXIDES.filter((b) => a < b && elementOf(a) === elementOf(b)).map((b) => [a, b] as const),
  );

  it('hold the same mass of the element before and after a change of form', () => {
    const amount = fc.double({ min: 1e-6, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom(...pairs), amount, ([from, to], wt) => {
        const changed = convertForm(wt, from, to);
        expect(changed / oxideFactor(to) / (wt / oxideFactor(from))).toBeCloseTo(1, 12);
        expect(convertForm(changed, to, from) / wt).toBeCloseTo(1, 12);
      }),
    );
  });

  it('every known oxide names its element and weighs more than it', () => {
    for (const oxide of OXIDES) {
      expect(ATOMIC_WEIGHTS[elementOf(oxide) ?? ''], oxide).toBeDefined();
      expect(oxideFactor(oxide)).toBeGreaterThan(1);
    }
    expect(new Set(OXIDES).size).toBe(OXIDES.length);
  });

  it('are shown in one order, unknown ones last', () => {
    expect(['Zz', 'Cl', 'PbO', 'Aa', 'SiO2'].sort(byDisplayOrder)).toEqual(['SiO2', 'PbO', 'Cl', 'Aa', 'Zz']);
  });
});
