import { useDeferredValue, useLayoutEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { Comparison } from '../../../../api/contract/placement.ts';
import type { SlipChoice } from '../../../../api/contract/slip-choice.ts';
import type { Sample } from '../../../../api/domain/composition/types.ts';
import type { SlipShelf } from '../../../../api/domain/slip/slip-source.ts';
import { createSource, type Source } from '../../../parts/figure/source.ts';
import type { Draft } from '../../../parts/useDraft.ts';
import type { SlipChoices } from './choices.ts';
import type { Drawn } from './drawn.ts';
import { createPlacer, type Live, type Slipped } from './placer.ts';

/** What the page keeps about slip, all of it outside React. */
export interface Slip {
  readonly study: string;
  /** Ware group looked at; null for the one a sentence picks. */
  readonly against: string | null;
  readonly choices: Source<SlipChoices>;
  readonly live: Source<Live | null>;
  /** Draws of the replica last asked for. */
  readonly drawn: Source<Drawn | null>;
  readonly shelf: SlipShelf;
  readonly bodies: readonly Sample[];
  /** Slip drawn off reference sherds before the model is fitted. */
  readonly references: Draft<SlipChoice[]>;
}
interface SlipNeeds {
  readonly references: Draft<SlipChoice[]>;
  readonly study: string;
  readonly against: string | null;
  readonly result: Comparison | undefined;
  readonly samples: readonly Sample[];
  readonly groups: readonly { readonly id: string; readonly name: string }[];
  readonly choices: Source<SlipChoices>;
}

const NO_ONE = () => () => {};

/** Keeps every replica placed as its slip is drawn off: the choices change, the sources follow, no page is made again. */
export function useSlip({ result, samples, groups, choices, ...at }: SlipNeeds): Slip {
  const [live] = useState(() => createSource<Live | null>(null));
  const [drawn] = useState(() => createSource<Drawn | null>(null));
  const shelf = useMemo(
    () => ({
      slips: samples.filter(({ measured }) => measured === 'slip'),
      names: Object.fromEntries(groups.map(({ id, name }) => [id, name])),
    }),
    [samples, groups],
  );
  const bodies = useMemo(() => samples.filter(({ measured }) => measured === 'body'), [samples]);
  const placer = useMemo(() => result && createPlacer({ result, shelf }), [result, shelf]);
  useLayoutEffect(() => {
    const again = () => live.set(placer ? placer(choices.get()) : null);
    again();
    return choices.subscribe(again);
  }, [placer, choices, live]);
  const { study, against, references } = at;
  return useMemo(
    () => ({ study, against, references, choices, live, drawn, shelf, bodies }),
    [study, against, references, choices, live, drawn, shelf, bodies],
  );
}

/** The comparison with every replica as it is placed now. */
export function useFollowed(slip: Slip | undefined, result: Comparison): Comparison {
  const live = useSyncExternalStore(slip?.live.subscribe ?? NO_ONE, () => slip?.live.get() ?? null);
  return useMemo(() => withLive(result, live), [result, live]);
}

/** The same, a little later where the page is busy: for tables that may lag behind the plot. */
export function useFollowedLater(slip: Slip | undefined, result: Comparison): Comparison {
  return useDeferredValue(useFollowed(slip, result));
}

function withLive(result: Comparison, live: Live | null): Comparison {
  if (live === null || live.placements.length !== result.placements.length) return result;
  const same = live.placements.every(({ id }, at) => id === result.placements[at]!.id);
  return same ? { ...result, placements: live.placements as Comparison['placements'] } : result;
}

/** One thing about a replica as it is placed now; only when it changes is who asks made again. */
export function useNow<Value>(slip: Slip, replica: string, pick: (now: Slipped | undefined) => Value): Value {
  return useSyncExternalStore(slip.live.subscribe, () => pick(slip.live.get()?.byId.get(replica)));
}
