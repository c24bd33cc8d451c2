import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { Comparison } from '../../../../api/contract/placement.ts';
import type { SharedOf } from '../../../../api/contract/shared.ts';
import type { SlipChoice } from '../../../../api/contract/slip-choice.ts';
import type { Sample } from '../../../../api/domain/composition/types.ts';
import { placeSample } from '../../../../api/domain/placement/place.ts';
import { createSource } from '../../../parts/figure/source.ts';
import type { Draft } from '../../../parts/useDraft.ts';
import type { SlipChoices } from '../../placement/slip/choices.ts';
import { createPlacer, most } from '../../placement/slip/placer.ts';
import { type Slip, useSlip } from '../../placement/slip/useSlip.ts';

type Shared = Pick<SharedOf<'placement'>, 'placement' | 'slips'>;
/** What a visitor can try: slip drawn off as they like, beside the placement as it was kept. */
export interface Tried {
  readonly slip: Slip;
  /** The comparison with every replica as it was measured, its slip in: what trying starts from. */
  readonly result: Comparison;
  /** Slip as the placement was kept with. */
  readonly asKept: SlipChoices;
}
const NO_SAMPLES: readonly Sample[] = [];
const NO_REFERENCES: Draft<SlipChoice[]> = { value: [], set: () => {}, clear: () => {}, restored: false };

/** Null where nothing can be tried: no slip came with the share, or it does not give the kept numbers again. */
export function useTried({ placement: { result }, slips }: Shared, against: string | null): Tried | null {
  const asKept = useMemo(() => keptChoices(result), [result]);
  const [choices] = useState(() => createSource(asKept));
  useEffect(() => choices.set(asKept), [choices, asKept]);
  const base = useMemo(() => asMeasured(result), [result]);
  const groups = useMemo(
    () => Object.entries(slips?.names ?? {}).map(([id, name]) => ({ id, name })),
    [slips],
  );
  const samples = (slips?.samples ?? NO_SAMPLES) as readonly Sample[];
  const slip = useSlip({
    ...{ study: '', against, references: NO_REFERENCES, choices, groups, samples },
    result: base,
  });
  const sound = useMemo(
    () => samples.length > 0 && givesTheSame(result, { base, shelf: slip.shelf, asKept }),
    [result, base, samples, slip.shelf, asKept],
  );
  return useMemo(() => (sound ? { slip, result: base, asKept } : null), [sound, slip, base, asKept]);
}

/** Whether the slip is other than it was kept with, for any replica. */
export function useIsTried(tried: Tried | null): boolean {
  const at = tried?.slip.choices;
  return useSyncExternalStore(at?.subscribe ?? NEVER, () => {
    if (!tried) return false;
    const now = tried.slip.choices.get();
    return Object.keys({ ...now, ...tried.asKept }).some((id) => keyOf(now[id]) !== keyOf(tried.asKept[id]));
  });
}
const NEVER = () => () => {};
const keyOf = (choice: SlipChoice | undefined) =>
  choice && choice.f > 0 ? JSON.stringify([choice.source, choice.f, choice.unmeasured]) : '';

function keptChoices({ request, replicas }: Comparison): SlipChoices {
  const placed = new Set(replicas.map(({ id }) => id));
  const own = (request.slip ?? []).filter(({ specimen }) => placed.has(specimen));
  return Object.fromEntries(own.map((choice) => [choice.specimen, choice]));
}

/** Replicas whose slip was drawn off are placed again with it in, by the code that placed them. */
function asMeasured(result: Comparison): Comparison {
  const drawn = new Set((result.slip ?? []).map(({ specimen }) => specimen));
  const samples = new Map((result.replicas as readonly Sample[]).map((sample) => [sample.id, sample]));
  const placements = result.placements.map((placed) => {
    const sample = drawn.has(placed.id) ? samples.get(placed.id) : undefined;
    return sample ? (placeSample(result.model, sample) as (typeof result.placements)[number]) : placed;
  });
  return { ...result, placements };
}

interface Again {
  readonly base: Comparison;
  readonly shelf: Slip['shelf'];
  readonly asKept: SlipChoices;
}

/** The slip as it was kept must give the placement as it was kept; else its analyses have changed in between. */
function givesTheSame(kept: Comparison, { base, shelf, asKept }: Again): boolean {
  const live = createPlacer({ result: base, shelf })(asKept);
  return kept.placements.every(({ id, scores }) => {
    const now = live.byId.get(id);
    if (!now || now.refusal) return false;
    // A share kept at the very bound may lie between two steps of the slider.
    if (now.choice && now.reach && now.choice.f > most(now.reach)) return true;
    return now.placement.scores.every((score, k) => score === scores[k]);
  });
}
