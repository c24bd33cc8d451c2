import type { Amount } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import { DRAW_OFF_DEFAULTS } from './mixing.ts';
import type { Analysed } from './types.ts';

/**
 * The mean of a ware group's slips (wt%), over the oxides measured in all of them, for a piece whose own slip was not
 * analysed: σ is that of a single new slip, s·√(1 + 1/n) with n − 1 degrees of freedom, s the standard deviation
 * between the n slips, or the slips' own σ (root mean square) where that is greater. Below detection counts as 0.65 of
 * the limit; where all are below, so is the mean. A slip below an unknown limit is left out of that oxide, and the
 * label says so. Throws with fewer than two slips: one cannot tell how slips of the ware differ.
 * @example
 * of = (value) => ({ value, limit: null, sigma: null, sigmaBasis: null, resolution: null })
 * slip = (label, silica) => ({ label, spots: 1, amounts: { SiO2: of(silica) } })
 * meanSlip('Red ware', [slip('a', 60), slip('b', 62)]).amounts.SiO2 // { value: 61, sigma: 1.7320508, sigmaDf: 1 }
 * meanSlip('Red ware', []) // throws Red ware has none
 * meanSlip('Red ware', [slip('a', 60)]) // throws choose the slip of a itself
 */
export function meanSlip(name: string, slips: readonly Analysed[]): Analysed {
  const [first] = slips;
  if (!first) throw new RequirementError(`a mean slip needs at least two slip analyses; ${name} has none`);
  if (slips.length === 1)
    throw new RequirementError(
      `a mean slip needs at least two slip analyses, to tell how slips of the ware differ; ${name} has one: choose the slip of ${first.label} itself if the piece bears the same slip`,
    );
  return meanOfAnalyses(`mean slip of ${name}`, slips);
}

/**
 * As `meanSlip`, of anything (bodies, paints) under any name. One analysis stands for itself, and the label says that
 * its ± does not hold how others differ. Takes at least one.
 * @example
 * of = (value) => ({ value, limit: null, sigma: 0.5, sigmaBasis: 'stated', resolution: null })
 * meanOfAnalyses('mean body of Red ware', [{ label: 'a', spots: 1, amounts: { SiO2: of(60) } }]).label // 'mean body of Red ware (n = 1: ± is of this analysis alone)'
 */
export function meanOfAnalyses(name: string, all: readonly Analysed[]): Analysed {
  const [first, second] = all;
  if (!second) return { ...first!, label: `${name} (n = 1: ± is of this analysis alone)` };
  const notes: string[] = [];
  const shared = Object.keys(first!.amounts).filter((oxide) => all.every((one) => one.amounts[oxide]));
  const amounts = shared.flatMap((oxide): [string, Amount][] => {
    const found = all.map((one) => one.amounts[oxide]!);
    if (found.every(({ value }) => value === null)) return [[oxide, belowAll(found)]];
    const known = found.filter(({ value, limit }) => value !== null || limit !== null);
    if (known.length < 2) {
      notes.push(`${oxide} left out, below an unknown limit in ${all.length - known.length}`);
      return [];
    }
    if (known.length < all.length)
      notes.push(`${oxide} of ${known.length}, below an unknown limit in the others`);
    return [[oxide, meanAmount(known)]];
  });
  const label = `${name} (${[`n = ${all.length}`, ...notes].join('; ')})`;
  return { label, spots: 1, amounts: Object.fromEntries(amounts) };
}

const limitOf = (all: readonly Amount[]) => {
  const limits = all.flatMap(({ limit }) => (limit === null ? [] : [limit]));
  return limits.length > 0 ? Math.max(...limits) : null;
};

const belowAll = (all: readonly Amount[]): Amount => ({
  ...{ value: null, limit: limitOf(all), sigma: null, sigmaBasis: null, resolution: null },
});

function meanAmount(all: readonly Amount[]): Amount {
  const n = all.length;
  const { fraction } = DRAW_OFF_DEFAULTS;
  const values = all.map((a) => a.value ?? fraction * a.limit!);
  const mean = values.reduce((sum, x) => sum + x, 0) / n;
  const between = values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (n - 1);
  const own = all.reduce((sum, a) => sum + ownVariance(a), 0) / n;
  const sigma = Math.sqrt(Math.max(between, own) * (1 + 1 / n));
  const spread =
    sigma > 0 ? { sigma, sigmaBasis: 'stated' as const, sigmaDf: n - 1 } : { sigma: null, sigmaBasis: null };
  return { value: mean, limit: limitOf(all), ...spread, resolution: null };
}

/** Below detection: uniform between 0 and the limit. */
const ownVariance = ({ value, limit, sigma }: Amount) =>
  value === null ? limit! ** 2 / 12 : (sigma ?? 0) ** 2;
