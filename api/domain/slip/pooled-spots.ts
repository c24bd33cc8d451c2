import type { Amount } from '../composition/types.ts';
import type { Analysed } from './types.ts';

/**
 * Analyses of one kind whose σ comes from a few spots each, with that scatter pooled: per oxide, the variance over
 * spots averaged over all of them (weights n − 1), then divided by each one's own number n of spots. Two or three spots
 * alone give a variance too rough to weigh by. Stated and assumed σ are left as they are.
 * The pooled σ, of the mean, is marked as stated; its degrees of freedom are those of all spots together.
 * @example
 * of = (sigma) => ({ value: 1, limit: null, sigma, sigmaBasis: 'spots', sigmaDf: 1, resolution: null })
 * pooled = poolSpots([{ label: 'a', spots: 2, amounts: { TiO2: of(0.01) } }, { label: 'b', spots: 2, amounts: { TiO2: of(0.03) } }])
 * pooled.analyses[0].amounts.TiO2.sigma // 0.0223607
 * pooled.df // 2
 */
export function poolSpots(all: readonly Analysed[]): { analyses: readonly Analysed[]; df: number | null } {
  const fromSpots = all.filter((a) => a.spots > 1 && Object.values(a.amounts).some((x) => isSpots(x)));
  if (fromSpots.length === 0) return { analyses: all, df: null };
  const df = fromSpots.reduce((sum, a) => sum + a.spots - 1, 0);
  const analyses = all.map((analysed) => ({
    ...analysed,
    amounts: Object.fromEntries(
      Object.entries(analysed.amounts).map(([oxide, amount]) => {
        if (!isSpots(amount)) return [oxide, amount];
        const sigma = Math.sqrt(perSpot(fromSpots, oxide) / (amount.sigmaDf! + 1));
        return [oxide, { ...amount, sigma, sigmaBasis: 'stated' as const, sigmaDf: null }];
      }),
    ),
  }));
  return { analyses, df };
}

const isSpots = ({ sigmaBasis, sigmaDf, sigma, value }: Amount) =>
  sigmaBasis === 'spots' && sigma !== null && value !== null && (sigmaDf ?? 0) > 0;

function perSpot(all: readonly Analysed[], oxide: string): number {
  let [above, below] = [0, 0];
  for (const { amounts } of all) {
    const amount = amounts[oxide];
    if (!amount || !isSpots(amount)) continue;
    const df = amount.sigmaDf!;
    above += df * (df + 1) * amount.sigma! ** 2;
    below += df;
  }
  return above / below;
}
