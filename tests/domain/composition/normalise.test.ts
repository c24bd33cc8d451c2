import { describe, expect, it } from 'vitest';
import { oxideFactor } from '../../../api/domain/chemistry/oxides.ts';
import { normaliseAnalysis } from '../../../api/domain/composition/normalise.ts';
import { expectClose } from '../../support/close.ts';
import { report, reported, settings } from './build.ts';

const normalise = (values: Readonly<Record<string, number | null>>, change = {}) =>
  normaliseAnalysis(report(values), settings(change));
const sumOf = (amounts: Readonly<Record<string, { value: number | null }>>) =>
  Object.values(amounts).reduce((sum, { value }) => sum + (value ?? 0), 0);

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
