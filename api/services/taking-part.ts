import type { ComparisonData } from '../contract/comparison-data.ts';
import type { Comparison } from '../contract/placement.ts';

/**
 * Of the data of a comparison only what takes part in it: where every replica was asked for, those that nothing was
 * measured on (tiles that are only planned, say) stand among the data, and go no further than the study.
 */
export function takingPart(
  { groups, specimens, analyses }: ComparisonData,
  { excluded, groups: compared }: Pick<Comparison, 'excluded' | 'groups'>,
): ComparisonData {
  const told = new Set([
    ...analyses.map(({ specimen }) => specimen),
    ...excluded.map(({ specimen }) => specimen),
  ]);
  const kept = specimens.filter(({ id }) => told.has(id));
  const named = new Set([...compared.map(({ id }) => id), ...kept.map(({ group }) => group)]);
  return { groups: groups.filter(({ id }) => named.has(id)), specimens: kept, analyses };
}
