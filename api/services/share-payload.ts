import type { share } from '../../db/schema/schema.ts';
import type { SharedPlacement } from '../contract/shared.ts';

/** What is kept with a share, by its kind: all that a visitor can reach, besides what a live sheet reads. */
export type SharePayload = PlacementPayload | SheetPayload;
export type PlacementPayload = SharedPlacement;
/** A firing whose sheet is open at the address, and lives on while it is. */
export interface SheetPayload {
  readonly kind: 'sheet';
  readonly firing: string;
  readonly name: string;
}

export type KindOfShare = SharePayload['kind'];
export type PayloadOf<Kind extends KindOfShare> = Extract<SharePayload, { kind: Kind }>;

/** Shares made before there were kinds are of placements. */
export function payloadOf({ payload }: Pick<typeof share.$inferSelect, 'payload'>): SharePayload {
  const kept = payload as SharePayload | Omit<PlacementPayload, 'kind'>;
  return 'kind' in kept ? kept : { kind: 'placement', ...kept };
}
