import type { Sample } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import { meanSlip } from './mean-slip.ts';
import type { Analysed } from './types.ts';

/** Which analysis stands for the slip beneath a paint. */
export type SlipSource =
  | { readonly kind: 'own' }
  | { readonly kind: 'specimen'; readonly specimen: string }
  | { readonly kind: 'group'; readonly group: string };

/** The slip analyses of a study, one sample a specimen, and the names of its ware groups by id. */
export interface SlipShelf {
  readonly slips: readonly Pick<Sample, 'id' | 'label' | 'group' | 'spots' | 'amounts'>[];
  readonly names: Readonly<Record<string, string>>;
}

/**
 * The slip beneath a specimen's paint: its own analysis, that of another specimen, or the mean of a ware group's.
 * Throws when there is no such analysis.
 * @example
 * of = (value) => ({ value, limit: null, sigma: 0.5, sigmaBasis: 'stated', resolution: null })
 * shelf = { slips: [{ id: 't1', label: 'T1', group: null, spots: 1, amounts: { SiO2: of(60) } }], names: {} }
 * slipFor({ kind: 'own' }, { id: 't1', label: 'T1' }, shelf).label // 'slip of T1'
 * slipFor({ kind: 'own' }, { id: 't2', label: 'T2' }, shelf) // throws T2 has none
 */
export function slipFor(
  source: SlipSource,
  specimen: { readonly id: string; readonly label: string },
  { slips, names }: SlipShelf,
): Analysed {
  if (source.kind === 'group') {
    const name = names[source.group] ?? 'this ware group';
    return meanSlip(
      name,
      slips.filter(({ group }) => group === source.group),
    );
  }
  const id = source.kind === 'own' ? specimen.id : source.specimen;
  const found = slips.find((slip) => slip.id === id);
  if (found) return { label: `slip of ${found.label}`, spots: found.spots, amounts: found.amounts };
  throw new RequirementError(
    source.kind === 'own'
      ? `drawing slip off needs an analysis of the slip; ${specimen.label} has none of its own`
      : 'drawing slip off needs an analysis of the slip; the specimen chosen for it has none',
  );
}
