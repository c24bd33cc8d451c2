import type { NewBatch } from '../../../../api/contract/batch.ts';
import type { RecipeSolution } from '../../../../api/domain/batch/nearest-batch.ts';
import { showSignificant } from '../../../parts/numbers.ts';
import { type FireForm, readFire } from '../parts/fire-form.ts';
import type { Aimed } from './target-form.ts';

export interface Found {
  readonly solution: RecipeSolution;
  readonly aimed: Aimed;
  readonly fire: FireForm;
}

/** A found batch, 100 g of it dry, as one that can be kept or shared; null while its fire cannot be read. */
export function batchOf({ solution, aimed, fire }: Found, name: string): NewBatch | null {
  const read = readFire(fire);
  if (typeof read === 'string') return null;
  const { celsius, atmosphere, sulfurPerLead } = read;
  const lines = solution.lines.map(({ material, amount }) => ({
    ...{ material: material.id, amount: Number(amount.toFixed(4)), water: 0 },
  }));
  return {
    ...{ name, unit: 'g' as const, lines, note: '', specimens: [] },
    fire: { celsius, atmosphere, sulfurPerLead: sulfurPerLead && { ...sulfurPerLead } },
    target: { name: aimed.name, parts: { ...aimed.parts } },
  };
}

export const METRICS = {
  distance: { title: 'By proportions', words: 'Aitchison distance: traces weigh as much as bulk' },
  error: { title: 'By weighted error', words: 'wt% in units of each oxide’s ±: bulk counts most' },
} as const;

/** How a batch was found, in sentences that go with it. */
export function howFound({ solution, aimed }: Found): string {
  const { metric, distance, error, how, proven, warnings } = solution;
  const { title, words } = METRICS[metric];
  return [
    `The nearest batch of the materials chosen to ${aimed.name}, ${title.toLowerCase()} (${words}):`,
    `distance ${showSignificant(distance)} in log-ratio units, error ${showSignificant(error)} σ.`,
    `Chosen: ${how}${proven ? '' : ' (not proven to be the best choice)'}.`,
    ...aimed.remarks,
    ...warnings,
  ].join(' ');
}
