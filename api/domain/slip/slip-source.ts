import type { Amount, Sample } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import { DRAW_OFF_DEFAULTS } from './mixing.ts';
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

/**
 * The mean of a ware group's slips (wt%), over the oxides measured in all of them, for a piece whose own slip was not
 * analysed: σ is that of a single new slip, s·√(1 + 1/n), s the standard deviation between the n slips; of one slip
 * its own. Below detection counts as 0.65 of the limit; where all are below, so is the mean. Throws without a slip.
 * @example
 * of = (value) => ({ value, limit: null, sigma: null, sigmaBasis: null, resolution: null })
 * slip = (label, silica) => ({ label, spots: 1, amounts: { SiO2: of(silica) } })
 * meanSlip('Red ware', [slip('a', 60), slip('b', 62)]).amounts.SiO2 // { value: 61, sigma: 1.7320508 }
 * meanSlip('Red ware', []) // throws Red ware has none
 */
export function meanSlip(name: string, slips: readonly Analysed[]): Analysed {
  const [first] = slips;
  if (!first) throw new RequirementError(`a mean slip needs at least one slip analysis; ${name} has none`);
  const label = `mean slip of ${name} (n = ${slips.length})`;
  if (slips.length === 1) return { ...first, label };
  const shared = Object.keys(first.amounts).filter((oxide) => slips.every((slip) => slip.amounts[oxide]));
  const amounts = Object.fromEntries(
    shared.map((oxide) => [oxide, meanAmount(slips.map((slip) => slip.amounts[oxide]!))]),
  );
  return { label, spots: 1, amounts };
}

function meanAmount(all: readonly Amount[]): Amount {
  const n = all.length;
  const limits = all.flatMap(({ limit }) => (limit === null ? [] : [limit]));
  const limit = limits.length > 0 ? Math.max(...limits) : null;
  if (all.every(({ value }) => value === null))
    return { value: null, limit, sigma: null, sigmaBasis: null, resolution: null };
  const { fraction } = DRAW_OFF_DEFAULTS;
  const values = all.map((a) => a.value ?? fraction * (a.limit ?? 0));
  const mean = values.reduce((sum, x) => sum + x, 0) / n;
  const variance = values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1);
  const sigma = Math.sqrt(variance * (1 + 1 / n));
  return { value: mean, limit, sigma: sigma || null, sigmaBasis: sigma ? 'stated' : null, resolution: null };
}
