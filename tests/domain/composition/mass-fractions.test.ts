import { describe, expect, it } from 'vitest';
import { normaliseAnalysis } from '../../../api/domain/composition/normalise.ts';
import { expectClose } from '../../support/close.ts';
import { report, reported, settings } from './build.ts';

const normalise = (values: Readonly<Record<string, number | null>>, change = {}) =>
  normaliseAnalysis(report(values), settings(change));

describe('normalisation reads oxygen, carbon and atom %', () => {
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
