import { describe, expect, it } from 'vitest';
import { elementOf, oxideFactor } from '../../../api/domain/chemistry/oxides.ts';
import { totalDisagreement, totalHints, uncertaintyFaults } from '../../../api/domain/composition/faults.ts';
import { amount, reported } from './build.ts';

const readings = (values: Readonly<Record<string, number>>) =>
  Object.entries(values).map(([analyte, value]) => ({
    analyte,
    element: elementOf(analyte),
    amount: amount(value),
  }));
const sum = (values: Readonly<Record<string, number>>) => Object.values(values).reduce((a, b) => a + b);
const hintsOf = (values: Readonly<Record<string, number>>) => totalHints(readings(values), sum(values));

const BODY = { SiO2: 62, Al2O3: 20, Fe2O3: 8, K2O: 4, CaO: 2.5, MgO: 2, TiO2: 1, Na2O: 0.5 };
const halved = { ...BODY, Al2O3: 10, Fe2O3: 4, K2O: 2, Na2O: 0.25 };

describe('uncertaintyFaults', () => {
  it('notices the real entry of Al 11.01 ± 34 % as a figure after ±', () => {
    const [message] = uncertaintyFaults([reported('Al', 11.01, { uncertainty: 3.74, basis: '1σ' })]);
    expect(message).toContain('above 30 % of a major value');
    expect(message).toContain('Al 11.01 ± 3.74');
  });

  it('expects wide uncertainties in traces and near the detection limit', () => {
    const near = { uncertainty: 0.08, basis: '1σ' as const };
    expect(uncertaintyFaults([reported('SnO2', 0.2, { ...near, limit: 0.1 })])).toEqual([]);
    expect(uncertaintyFaults([reported('SnO2', 0.09, near)])).toEqual([]);
    expect(uncertaintyFaults([reported('Sr', 90, { ...near, uncertainty: 40, unit: 'ppm' })])).toEqual([]);
    expect(uncertaintyFaults([reported('SnO2', 2, { ...near, uncertainty: 0.8, limit: 0.1 })])).toHaveLength(
      1,
    );
  });

  it('names values whose ± has no stated meaning', () => {
    const found = uncertaintyFaults([
      reported('Si', 20, { uncertainty: 0.1, basis: 'unstated' }),
      reported('K', 2, { uncertainty: 0.1 }),
      reported('Ca', 2, { uncertainty: 0.1, basis: '2σ' }),
    ]);
    expect(found).toEqual(['What ± means is not stated for Si, K; taken as one standard deviation.']);
  });
});

describe('totalHints', () => {
  it('see from the total that the two-cation factor was forgotten', () => {
    expect(hintsOf(halved)).toEqual([
      'If Al2O3, Fe2O3, K2O, Na2O were halved by a forgotten two-cation factor, the total would be 100.',
    ]);
  });

  it('see element percentages under oxide headings', () => {
    const elements = Object.fromEntries(
      Object.entries(BODY).map(([name, x]) => [name, x / oxideFactor(name)]),
    );
    expect(hintsOf(elements)).toEqual([
      'Read as elements, the figures would make 100 wt% of oxides: are the headings right?',
    ]);
  });

  it('see figures that already sum to 100 under element headings', () => {
    const mislabelled = { Si: 62, Al: 20, Fe: 8, K: 4, Ca: 2.5, Mg: 2, Ti: 1, Na: 0.5 };
    expect(totalHints(readings({ ...mislabelled, O: 3 }), 190)[0]).toContain(
      'The figures themselves sum to 100',
    );
  });

  it('see both with traces under element headings beside', () => {
    expect(hintsOf({ ...halved, Sr: 0.1 })[0]).toContain('forgotten two-cation factor');
    expect(totalHints(readings({ Si: 62, Al: 20, Pb: 10, CaO: 7 }), 190)[0]).toContain('sum to 99');
  });

  it('take 100 of oxides with a loss beside them for the ignited basis, not for wrong headings', () => {
    const ignited = { SiO2: 50, PbO: 50, LOI: 8 };
    expect(hintsOf(ignited)).toEqual([
      'Without what leaves on ignition the oxides sum to 100: they may be on the ignited basis, with the loss measured beside them.',
    ]);
    // A trace under an element heading hardly moves the total.
    expect(totalHints(readings({ ...ignited, Sr: 0.1 }), 108.12)).toHaveLength(1);
    expect(hintsOf({ SiO2: 46, PbO: 46, LOI: 8 })).toEqual([]);
  });

  it('stay silent on a usual total and on one that nothing known explains', () => {
    expect(hintsOf(BODY)).toEqual([]);
    expect(hintsOf({ SiO2: 40, PbO: 30 })).toEqual([]);
    expect(hintsOf({ SiO2: 80, PbO: 60 })).toEqual([]);
  });
});

describe('totalDisagreement', () => {
  const against = (values: Readonly<Record<string, number>>, total: number) =>
    totalDisagreement(readings({ ...values, Total: total }), sum(values));

  it('is silent when the printed total is the sum, of figures or of oxides, or is not given', () => {
    expect(against(BODY, 100.3)).toBeNull();
    expect(totalDisagreement(readings({ Si: 30, Total: 64.2 }), 64.18)).toBeNull();
    expect(totalDisagreement(readings({ Si: 30, Total: 30 }), 64.18)).toBeNull();
    expect(totalDisagreement(readings(BODY), 100)).toBeNull();
  });

  it('tells a forgotten factor from another fault', () => {
    expect(against(halved, 100)).toContain('Al2O3, Fe2O3, K2O, Na2O doubled would restore it');
    expect(against({ ...BODY, SiO2: 26 }, 100)).toBe(
      "The laboratory's total is 100, the values here sum to 64: a digit, a heading or an analyte may be wrong or missing.",
    );
  });

  it('cannot see one halved oxide without a total, and says nothing then', () => {
    expect(hintsOf({ ...BODY, Na2O: 0.25 })).toEqual([]);
  });
});
