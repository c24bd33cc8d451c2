import type { Amount, Sample } from '../../api/domain/composition/types.ts';
import { DEFAULT_MODEL, type ModelSettings } from '../../api/domain/reference/types.ts';
import { GROUP_OF, GROUPS, IDS, OXIDES, RAW } from './romano-british.ts';

/** An amount in wt%; null is below detection. */
export const amount = (value: number | null, limit: number | null = null): Amount => ({
  value,
  limit,
  sigma: null,
  sigmaBasis: null,
  resolution: null,
});

/** A sample by its amounts; a reference when it has a group. */
export function sampleOf(
  id: string,
  group: string | null,
  amounts: Readonly<Record<string, number | Amount>>,
): Sample {
  const entries = Object.entries(amounts).map(([oxide, v]) => [oxide, typeof v === 'number' ? amount(v) : v]);
  return {
    id,
    label: id,
    group,
    role: group === null ? 'replica' : 'reference',
    measured: 'paint',
    spots: 1,
    rawTotal: 100,
    amounts: Object.fromEntries(entries),
  };
}

export const settingsFor = (
  groups: readonly string[],
  changes: Partial<ModelSettings> = {},
): ModelSettings => ({
  groups,
  ...DEFAULT_MODEL,
  ...changes,
});

/** One of the 45 Romano-British sherds as a reference of its group, or as a sample that belongs to none. */
export const sherd = (row: number, as: 'reference' | 'replica' = 'reference'): Sample =>
  sampleOf(
    as === 'reference' ? IDS[row]! : `${IDS[row]} again`,
    as === 'reference' ? GROUP_OF[row]! : null,
    Object.fromEntries(OXIDES.map((oxide, j) => [oxide, RAW[row]![j]!])),
  );

export const SHERDS: readonly Sample[] = RAW.map((_, row) => sherd(row));
export const POTTERY_NAMES = Object.fromEntries(GROUPS.map((g) => [g, g.replace(/^G\d_/, '')]));
