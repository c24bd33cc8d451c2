import { clrInverse } from '../../api/domain/composition/log-ratio.ts';
import type { Amount, Sample } from '../../api/domain/composition/types.ts';
import type { ModelSettings } from '../../api/domain/reference/types.ts';
import type { RandomStream } from '../../api/domain/statistics/random.ts';

export const OXIDES = Array.from({ length: 9 }, (_, j) => `Oxide${j}`);
export const SPARSE = 'Trace';
/** Detection limit of the trace oxide, wt%. */
const LIMIT = 0.05;

const amount = (value: number | null, limit: number | null = null): Amount => ({
  value,
  limit,
  sigma: null,
  sigmaBasis: null,
  resolution: null,
});

/** A sample by its centred log-ratios, and a trace oxide (wt%, below detection under the limit) where one is given. */
export function sampleFrom(
  id: string,
  group: string | null,
  { clr, trace }: { readonly clr: readonly number[]; readonly trace: number | null },
): Sample {
  const parts = clrInverse(clr);
  const amounts = Object.fromEntries(OXIDES.map((oxide, j) => [oxide, amount(parts[j]!)]));
  if (trace !== null) amounts[SPARSE] = trace < LIMIT ? amount(null, LIMIT) : amount(trace);
  const role = group === null ? 'replica' : 'reference';
  return { id, label: id, group, role, measured: 'paint', spots: 1, rawTotal: 100, amounts };
}

/**
 * Draws members of invented groups: a centre for each, one spread for all (mixing weights falling by √½ a direction,
 * turned at random, as in scripts/simulations/membership.ts).
 */
export function population(stream: RandomStream, groups: number): (group: number) => number[] {
  const { normal } = stream;
  const mix = OXIDES.map((_, k) => OXIDES.map(() => 0.25 * Math.SQRT1_2 ** k * normal()));
  const centres = Array.from({ length: groups }, () => OXIDES.map(() => 0.6 * normal()));
  return (group) => {
    const own = mix.map(() => normal());
    return centres[group]!.map((c, j) => c + mix.reduce((sum, row, k) => sum + row[j]! * own[k]!, 0));
  };
}

export const settingsOf = (groups: readonly string[]): ModelSettings => ({
  groups,
  parts: null,
  scale: 'log-ratio',
  covariance: { kind: 'auto' },
  replacement: { fraction: 0.65, limits: {} },
});
