import type { Comparison } from '../../../../api/contract/placement.ts';
import type { SlipChoice } from '../../../../api/contract/slip-choice.ts';
import type { Sample } from '../../../../api/domain/composition/types.ts';
import { placeSample } from '../../../../api/domain/placement/place.ts';
import type { Placement } from '../../../../api/domain/placement/types.ts';
import { RequirementError } from '../../../../api/domain/requirement.ts';
import { type DrawOffLimit, largestDrawOff } from '../../../../api/domain/slip/draw-off-limit.ts';
import { lackingIn } from '../../../../api/domain/slip/lacking.ts';
import { type MixingPath, mixingPath } from '../../../../api/domain/slip/mixing-path.ts';
import { drawOffSample } from '../../../../api/domain/slip/sample.ts';
import { type SlipShelf, slipFor } from '../../../../api/domain/slip/slip-source.ts';
import type { Analysed } from '../../../../api/domain/slip/types.ts';
import type { SlipChoices } from './choices.ts';

/** What a slip allows of one replica, whatever share of it is drawn off. */
export interface Reach {
  readonly slip: Analysed;
  readonly limit: DrawOffLimit;
  readonly path: MixingPath['points'];
}
/** One replica as it is placed now. */
export interface Slipped {
  readonly choice: SlipChoice | null;
  readonly placement: Placement;
  readonly reach: Reach | null;
  /** Why no slip can be drawn off; null when it can, or when none was chosen. */
  readonly refusal: string | null;
  /** Oxides that the slip was not measured for, although they are compared. */
  readonly lacking: readonly string[];
  readonly spent: readonly string[];
}
/** Every replica as it is placed now. */
export interface Live {
  readonly placements: readonly Placement[];
  readonly byId: ReadonlyMap<string, Slipped>;
}
export const STEP = 0.001;
/** The largest share on the slider. */
export const most = ({ limit }: Reach): number => Math.floor(limit.f / STEP) * STEP;

export interface PlacerNeeds {
  readonly result: Comparison;
  readonly shelf: SlipShelf;
}

/** Places replicas with their slip drawn off as chosen, by the domain code that the service runs. Remembers what did not change. */
export function createPlacer({ result, shelf }: PlacerNeeds): (choices: SlipChoices) => Live {
  const samples = new Map((result.replicas as readonly Sample[]).map((sample) => [sample.id, sample]));
  const reaches = new Map<string, Reach | string>();
  const before = new Map<string, Slipped>();
  const one = (placement: Placement, choice: SlipChoice | undefined): Slipped => {
    const known = before.get(placement.id);
    if (known && known.choice === (choice ?? null)) return known;
    const now = place(
      { result, shelf, reaches, sample: samples.get(placement.id) },
      placement,
      choice ?? null,
    );
    before.set(placement.id, now);
    return now;
  };
  return (choices) => {
    const all = (result.placements as readonly Placement[]).map((placement) =>
      one(placement, choices[placement.id]),
    );
    return {
      placements: all.map(({ placement }) => placement),
      byId: new Map(all.map((slipped) => [slipped.placement.id, slipped])),
    };
  };
}

interface Work extends PlacerNeeds {
  readonly reaches: Map<string, Reach | string>;
  readonly sample: Sample | undefined;
}

function place(work: Work, measured: Placement, choice: SlipChoice | null): Slipped {
  const { result, sample, shelf } = work;
  const still = { choice, placement: measured, reach: null, refusal: null, lacking: [], spent: [] };
  if (choice === null || sample === undefined) return still;
  const { unmeasured } = choice;
  const slip = attempt(() => slipFor(choice.source, sample, shelf));
  if (typeof slip === 'string') return { ...still, refusal: slip };
  const lacking = lackingIn(slip, result.model.parts, 'none');
  const reach = reachOf(work, slip, { sample, choice });
  if (typeof reach === 'string') return { ...still, refusal: reach, lacking };
  const f = Math.min(choice.f, most(reach));
  const { fraction } = result.model.settings.replacement;
  const done = attempt(() => {
    const drawn = drawOffSample(sample, slip, { f, unmeasured, fraction });
    return { placement: placeSample(result.model, drawn.sample), spent: drawn.spent };
  });
  return typeof done === 'string'
    ? { ...still, reach, refusal: done, lacking }
    : { ...still, ...done, reach, lacking };
}

function reachOf(
  { result: { model }, reaches }: Work,
  slip: Analysed,
  { sample, choice }: { readonly sample: Sample; readonly choice: SlipChoice },
): Reach | string {
  const { source, unmeasured } = choice;
  const key = JSON.stringify([sample.id, source, unmeasured]);
  const known = reaches.get(key);
  if (known !== undefined) return known;
  const options = { unmeasured, fraction: model.settings.replacement.fraction };
  const found = attempt((): Reach => {
    lackingIn(slip, model.parts, unmeasured);
    const limit = largestDrawOff(sample.amounts, slip.amounts, options);
    return { slip, limit, path: mixingPath(model, sample, { slip, ...options }).points };
  });
  reaches.set(key, found);
  return found;
}

/** The value, or the requirement that was not met, in words. */
export function attempt<Value>(work: () => Value): Value | string {
  try {
    return work();
  } catch (error) {
    if (error instanceof RequirementError) return error.message;
    throw error;
  }
}
