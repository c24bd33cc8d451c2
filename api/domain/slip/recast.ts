import { RequirementError } from '../requirement.ts';
import { effectiveDf } from './consistency.ts';
import { sharedOxides, weighable } from './measurement.ts';
import { type RecastRow, type RecastVerdict, recastVerdict } from './recast-verdict.ts';
import type { Analysed } from './types.ts';

/** Lead, and the colourants and ore oxides that a potter may have added with it. */
export const ADDED_OXIDES: readonly string[] = [
  ...['PbO', 'PbO2', 'Pb3O4', 'CuO', 'Cu2O', 'MnO', 'MnO2', 'Mn2O3', 'Mn3O4'],
  ...['SnO2', 'SO3', 'S', 'As2O3', 'Sb2O3', 'ZnO', 'Ag2O', 'Bi2O3', 'CoO'],
];

/** What is left of a paint beside a clay. */
export interface Recast {
  readonly removed: readonly string[];
  /** Oxides left out because one side was not measured, or is nothing or below detection. */
  readonly leftOut: readonly string[];
  readonly rows: readonly RecastRow[];
  readonly verdict: RecastVerdict;
}

/**
 * Recast test: takes lead and the added oxides out of a paint, renormalises the rest to 100, and divides it oxide by
 * oxide by a clay (body or slip) renormalised on the same oxides (after Hurst & Freestone 1996; Walton & Tite 2010,
 * doi 10.1111/j.1475-4754.2009.00506.x; procedure partly from memory). `added` replaces `ADDED_OXIDES`; oxides of
 * the clay itself, such as iron brought in with an ore, may be put in it. Throws when fewer than two oxides are left.
 * @example
 * of = (value) => ({ value, limit: null, sigma: value / 50, sigmaBasis: 'stated', resolution: null })
 * body = { label: 'body', spots: 1, amounts: { SiO2: of(62), Al2O3: of(20), Fe2O3: of(18) } }
 * glaze = { label: 'glaze', spots: 1, amounts: { PbO: of(55), SiO2: of(33.6), Al2O3: of(6), Fe2O3: of(5.4) } }
 * recast(glaze, body).rows.map((row) => row.ratio) // [1.20430, 0.66667, 0.66667]
 * recast(glaze, body).verdict.addedSilica // 0.33333
 */
export function recast(paint: Analysed, clay: Analysed, added: readonly string[] = ADDED_OXIDES): Recast {
  const measured = Object.keys(paint.amounts);
  const removed = measured.filter((oxide) => added.includes(oxide));
  const shared = sharedOxides([paint, clay]).filter((oxide) => !added.includes(oxide));
  const kept = shared.filter((oxide) => seen(paint, oxide) && seen(clay, oxide));
  if (kept.length < 2)
    throw new RequirementError(
      `a recast test needs at least two oxides besides lead and what was added; left: ${kept.join(', ') || 'none'}`,
    );
  const rows = rowsOf(kept, totals(paint, clay, kept), { paint, clay });
  const leftOut = measured.filter((oxide) => !added.includes(oxide) && !kept.includes(oxide));
  return { removed, leftOut, rows, verdict: recastVerdict(rows, clay.label) };
}

const seen = ({ amounts }: Analysed, oxide: string) => (amounts[oxide]?.value ?? 0) > 0;

function totals(paint: Analysed, clay: Analysed, kept: readonly string[]) {
  const total = (side: Analysed) => kept.reduce((sum, oxide) => sum + side.amounts[oxide]!.value!, 0);
  return { paint: total(paint), clay: total(clay) };
}

interface Sides {
  readonly paint: Analysed;
  readonly clay: Analysed;
}

function rowsOf(kept: readonly string[], total: { paint: number; clay: number }, sides: Sides): RecastRow[] {
  return kept.map((oxide) => {
    const [p, c] = [sides.paint.amounts[oxide]!.value!, sides.clay.amounts[oxide]!.value!];
    const [paint, clay] = [(100 * p) / total.paint, (100 * c) / total.clay];
    const relative = [sides.paint, sides.clay].flatMap((side) => relativeError(side, oxide) ?? []);
    const ratio = paint / clay;
    if (relative.length < 2) return { oxide, paint, clay, ratio, sigma: null, df: null };
    const sigma = ratio * Math.sqrt(relative[0]!.variance + relative[1]!.variance);
    return { oxide, paint, clay, ratio, sigma, df: effectiveDf(relative) };
  });
}

function relativeError(side: Analysed, oxide: string): { variance: number; df: number | null } | null {
  const { sigma, resolution } = side.amounts[oxide]!;
  if (sigma === null && resolution === null) return null;
  const { value, variance, df } = weighable(side, oxide);
  return { variance: variance / value ** 2, df };
}
