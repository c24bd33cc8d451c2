import { useState } from 'react';
import type { Comparison } from '../../../../api/contract/placement.ts';
import type { SlipChoice } from '../../../../api/contract/slip-choice.ts';
import { createSource, type Source } from '../../../parts/figure/source.ts';
import { keepDraft, readDraft } from '../../../parts/useDraft.ts';

/** Slip drawn off each replica, by specimen. A replica that is not in it has its slip in. */
export type SlipChoices = Readonly<Record<string, SlipChoice>>;

export const slipKey = (study: string): string => `slip.1.${study}`;
export const slipReferencesKey = (study: string): string => `slip-references.1.${study}`;

/** The choices of a study, kept outside React so that the slider moves without a page being made again. */
export function useSlipChoices(study: string): Source<SlipChoices> {
  const [source] = useState(() => {
    const kept = createSource<SlipChoices>(readDraft<SlipChoices>(slipKey(study)) ?? {});
    kept.subscribe(() => keepDraft(slipKey(study), kept.get()));
    return kept;
  });
  return source;
}

export const HAND = 'a value set by hand';

export const byHand = (specimen: string, source: SlipChoice['source'], f = 0): SlipChoice => ({
  specimen,
  source,
  f,
  sigma: 0,
  df: null,
  from: HAND,
  unmeasured: 'drop',
});

/** Takes a choice over; null puts the slip back in. */
export function choose(
  choices: Source<SlipChoices>,
  specimen: string,
  change: Partial<SlipChoice> | null,
): void {
  const { [specimen]: before, ...others } = choices.get();
  const start = before ?? byHand(specimen, { kind: 'own' });
  choices.set(change === null ? others : { ...others, [specimen]: { ...start, ...change } });
}

/** As the service is asked: replicas whose slip is in need no mention. */
export const asked = (choices: SlipChoices, replicas: readonly { readonly id: string }[]): SlipChoice[] =>
  replicas.flatMap(({ id }) => {
    const choice = choices[id];
    return choice && choice.f > 0 ? [choice] : [];
  });

/** Takes up the slip that a kept comparison was made with. */
export function restoreSlip(
  study: string,
  { request, replicas }: Pick<Comparison, 'request' | 'replicas'>,
): void {
  const kept = request.slip ?? [];
  const placed = new Set(replicas.map(({ id }) => id));
  const own = kept.filter(({ specimen }) => placed.has(specimen));
  keepDraft(slipKey(study), Object.fromEntries(own.map((choice) => [choice.specimen, choice])));
  keepDraft(
    slipReferencesKey(study),
    kept.filter(({ specimen }) => !placed.has(specimen)),
  );
}
