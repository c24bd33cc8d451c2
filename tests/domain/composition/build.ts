import type { Amount, NormalisationSettings, ReportedValue } from '../../../api/domain/composition/types.ts';
import { DEFAULT_NORMALISATION } from '../../../api/domain/composition/types.ts';

/** A reported value in wt%, changed where a test needs it. */
export const reported = (
  analyte: string,
  value: number | null,
  change: Partial<ReportedValue> = {},
): ReportedValue => ({
  analyte,
  value,
  unit: 'wt%',
  uncertainty: null,
  basis: null,
  belowDetection: value === null,
  limit: null,
  resolution: null,
  ...change,
});

/** Reported values of several analytes in wt%. */
export const report = (
  values: Readonly<Record<string, number | null>>,
  change: Partial<ReportedValue> = {},
) => Object.entries(values).map(([analyte, value]) => reported(analyte, value, change));

export const amount = (value: number | null, change: Partial<Amount> = {}): Amount => ({
  value,
  limit: null,
  sigma: null,
  sigmaBasis: null,
  resolution: null,
  ...change,
});

export const settings = (change: Partial<NormalisationSettings> = {}): NormalisationSettings => ({
  ...DEFAULT_NORMALISATION,
  ...change,
});

export const emptyLedger = () => ({ steps: [], warnings: [] as string[] });
