import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elementOf, oxideFactor } from '../../../api/domain/chemistry/oxides.ts';
import { normaliseAnalysis } from '../../../api/domain/composition/normalise.ts';
import { expectClose } from '../../support/close.ts';
import { report, settings } from './build.ts';

const normalise = (values: Readonly<Record<string, number | null>>, change = {}) =>
  normaliseAnalysis(report(values), settings(change));
const sumOf = (amounts: Readonly<Record<string, { value: number | null }>>) =>
  Object.values(amounts).reduce((sum, { value }) => sum + (value ?? 0), 0);

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
