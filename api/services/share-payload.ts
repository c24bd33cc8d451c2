import type { share } from '../../db/schema/schema.ts';
import type { FiredAnswer } from '../contract/batch.ts';
import type { ComparisonData } from '../contract/comparison-data.ts';
import type { SharedBench, SharedOf, SharedOutcome, SharedPlacement } from '../contract/shared.ts';
import { restingOn } from './share-outcome.ts';
import { takingPart } from './taking-part.ts';

/** What is kept with a share, by its kind: all that a visitor can reach, besides what a live sheet reads. */
export type SharePayload = PlacementPayload | SharedOutcome | SharedBench | SheetPayload;
export interface PlacementPayload extends Omit<SharedPlacement, 'bundled'> {
  /** What the placement was made from, for the zip; null where it was kept or shared without. */
  readonly data: ComparisonData | null;
}
/** A firing whose sheet is open at the address, and lives on while it is. */
export interface SheetPayload {
  readonly kind: 'sheet';
  readonly firing: string;
  readonly name: string;
}

/** A name for the owner's list, and the copy that a visitor will see. */
export interface Frozen<Payload extends SharePayload = SharePayload> {
  readonly name: string;
  readonly payload: Payload;
}

export type FrozenPayload = Exclude<SharePayload, SheetPayload>;
export type KindOfShare = SharePayload['kind'];
export type PayloadOf<Kind extends KindOfShare> = Extract<SharePayload, { kind: Kind }>;

/** Shares made before there were kinds are of placements; older ones of other kinds lack what their figures need. */
export function payloadOf({ payload }: Pick<typeof share.$inferSelect, 'payload'>): SharePayload {
  const kept = payload as SharePayload | Pick<PlacementPayload, 'placement' | 'text'>;
  if ('kind' in kept && kept.kind === 'sheet') return kept;
  if ('kind' in kept && kept.kind === 'outcome') return restingOn({ ...kept, tiles: kept.tiles ?? null });
  if ('kind' in kept && kept.kind === 'bench')
    return { ...kept, result: becoming(kept.result), target: kept.target ?? null, tiles: kept.tiles ?? [] };
  const placement: PlacementPayload = { slips: null, data: null, ...kept, kind: 'placement' };
  const { data } = placement;
  return data ? { ...placement, data: takingPart(data, placement.placement.result) } : placement;
}

/** What a batch becomes, without what each of its materials brings. */
export function becoming({ fired, ...rest }: SharedBench['result'] | FiredAnswer): SharedBench['result'] {
  const { lines: _, ...whole } = { lines: null, ...fired };
  return { ...rest, fired: whole };
}

type Around = 'comments' | 'expiresAt' | 'said';
type Told<Kind extends KindOfShare> = { [Each in Kind]: Omit<SharedOf<Each>, Around> }[Kind];

/** What a visitor is told of a payload. */
export function toldOf<Kind extends KindOfShare>(payload: PayloadOf<Kind>, bundled: boolean): Told<Kind>;
export function toldOf(payload: SharePayload, bundled: boolean): Told<KindOfShare> {
  if (payload.kind === 'sheet') return { kind: 'sheet', name: payload.name };
  if (payload.kind !== 'placement') return payload;
  const { data: _, ...told } = payload;
  return { ...told, bundled };
}
