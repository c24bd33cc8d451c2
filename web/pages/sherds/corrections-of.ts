import type { ReportedValue } from '../../../api/domain/composition/types.ts';

export interface Correction {
  readonly analyte: string;
  /** The figure as first entered; null where there was none. */
  readonly first: ReportedValue | null;
}

/** The analytes whose figures are no longer as first entered, in the order of the first list, added ones last. */
export function correctionsOf(first: readonly ReportedValue[], now: readonly ReportedValue[]): Correction[] {
  const [before, after] = [byAnalyte(first), byAnalyte(now)];
  const changed = first.filter((one) => !same(one, after.get(one.analyte)));
  const added = now.filter(({ analyte }) => !before.has(analyte));
  return [
    ...changed.map((one) => ({ analyte: one.analyte, first: one })),
    ...added.map(({ analyte }) => ({ analyte, first: null })),
  ];
}

const byAnalyte = (values: readonly ReportedValue[]) => new Map(values.map((one) => [one.analyte, one]));
const KEYS = ['value', 'unit', 'uncertainty', 'basis', 'belowDetection', 'limit', 'resolution'] as const;
const same = (one: ReportedValue, other: ReportedValue | undefined) =>
  other !== undefined && KEYS.every((key) => one[key] === other[key]);
