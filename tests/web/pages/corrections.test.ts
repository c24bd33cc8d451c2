import { describe, expect, it } from 'vitest';
import type { ReportedValue } from '../../../api/domain/composition/types.ts';
import { correctionsOf } from '../../../web/pages/sherds/corrections-of.ts';

const figure = (analyte: string, value: number): ReportedValue => ({
  ...{ analyte, value, unit: 'wt%', uncertainty: null, basis: null },
  ...{ belowDetection: false, limit: null, resolution: null },
});

describe('corrections', () => {
  it('name what was changed, taken out and added, and what stood there first', () => {
    const first = [figure('SiO2', 52.1), figure('PbO', 30), figure('CuO', 1)];
    const now = [figure('SiO2', 62.1), figure('PbO', 30), figure('MnO', 4)];
    expect(correctionsOf(first, now)).toEqual([
      { analyte: 'SiO2', first: first[0] },
      { analyte: 'CuO', first: first[2] },
      { analyte: 'MnO', first: null },
    ]);
  });
  it('are none where the figures are as they were, in whatever order', () => {
    const first = [figure('SiO2', 52.1), figure('PbO', 30)];
    expect(correctionsOf(first, [...first].reverse())).toEqual([]);
  });
});
