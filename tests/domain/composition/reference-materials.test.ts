import { describe, expect, it } from 'vitest';
import { oxideFactor } from '../../../api/domain/chemistry/oxides.ts';
import { normaliseAnalysis } from '../../../api/domain/composition/normalise.ts';
import { expectClose } from '../../support/close.ts';
import { report, reported, settings } from './build.ts';

const normalise = (values: Readonly<Record<string, number | null>>, change = {}) =>
  normaliseAnalysis(report(values), settings(change));

describe('normalisation of reference materials', () => {
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
