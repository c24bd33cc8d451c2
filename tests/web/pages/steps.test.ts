import { expect, test } from 'vitest';
import { normaliseAnalysis } from '../../../api/domain/composition/normalise.ts';
import { DEFAULT_NORMALISATION, type ReportedValue } from '../../../api/domain/composition/types.ts';
import { conversionsOf } from '../../../web/pages/sherds/steps.ts';

const of = (analyte: string, value: number): ReportedValue => ({
  analyte,
  value,
  unit: 'wt%',
  uncertainty: null,
  basis: null,
  belowDetection: false,
  limit: null,
  resolution: 0.01,
});

test.each([true, false])(
  'every oxide’s last step is its closure, the others are conversions (volatile-free: %s)',
  (volatileFree) => {
    const reported = [of('SiO2', 40), of('Fe', 5), of('PbO', 45), of('LOI', 3)];
    const normalised = normaliseAnalysis(reported, { ...DEFAULT_NORMALISATION, volatileFree });
    const conversions = conversionsOf(normalised);
    const closures = normalised.steps.filter((step) => !conversions.includes(step));
    expect(closures.map((step) => step.oxide)).toEqual(Object.keys(normalised.closed));
    for (const step of closures) expect(step.after).toBe(normalised.closed[step.oxide]?.value);
    expect(conversions.some((step) => step.analyte === 'Fe' && step.oxide === 'Fe2O3')).toBe(true);
  },
);
