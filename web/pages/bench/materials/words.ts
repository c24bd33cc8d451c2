import { fireOfEntry } from '../../../../api/domain/batch/bench-shelf.ts';
import { fireContent, type Yield } from '../../../../api/domain/batch/fire.ts';
import type { Hazard, Material, Span } from '../../../../api/domain/batch/types.ts';

const WORDS: Readonly<Record<Hazard, string>> = {
  lead: 'Lead',
  sulfur: 'Sulfur dioxide',
  silica: 'Silica dust',
  manganese: 'Manganese dust',
  caustic: 'Caustic',
  poison: 'Poisonous metal',
  fire: 'Fire',
};
export const hazardWord = (hazard: Hazard) => WORDS[hazard];

export const SHELF_FIRE = fireOfEntry({ celsius: 850, atmosphere: 'air', sulfurPerLead: null });

/**
 * wt% that the dry material loses at 850 °C in air, over what purity and the sulfur that stays leave open; negative
 * where it takes up oxygen.
 */
export function lossAt850({ content, spread }: Material): Span {
  const ends = spread ? [content, spread.low, spread.high] : [content];
  const losses = ends.flatMap((end) => LEVELS.map((level) => lossOf(fireContent(end, SHELF_FIRE, level))));
  return { low: Math.min(...losses), high: Math.max(...losses) };
}

const LEVELS = ['low', 'central', 'high'] as const;
function lossOf({ gases }: Yield): number {
  const loss = 100 * Object.values(gases).reduce((sum, g) => sum + g, 0);
  return Math.abs(loss) < 0.05 ? 0 : loss;
}

export function originWords({ origin }: Material): string {
  if (origin.kind === 'roast') return `Roast, ${origin.celsius} °C, ${origin.hours} h`;
  if (origin.kind === 'analysis') return `Analysis, total ${origin.total.toFixed(1)} wt%`;
  const { low, high } = origin.purity;
  const percent = (share: number) => Number((100 * share).toPrecision(4));
  if (low === 1) return '';
  return low === high ? `${percent(low)} % pure` : `${percent(low)} to ${percent(high)} % pure`;
}
