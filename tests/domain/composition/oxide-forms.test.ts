import { describe, expect, it } from 'vitest';
import { convertForm } from '../../../api/domain/chemistry/oxides.ts';
import { normaliseAnalysis } from '../../../api/domain/composition/normalise.ts';
import { expectClose } from '../../support/close.ts';
import { report, reported, settings } from './build.ts';

const normalise = (values: Readonly<Record<string, number | null>>, change = {}) =>
  normaliseAnalysis(report(values), settings(change));

describe('normalisation changes forms', () => {
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
