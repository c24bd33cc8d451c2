import type { PlacementUncertainty } from '../../../../api/domain/uncertainty/types.ts';
import type { DrawSettings } from './draws.ts';
import type { Slipped } from './placer.ts';

/** Draws, and of which replica as placed they are. */
export interface Drawn {
  readonly of: Slipped['placement'];
  readonly settings: DrawSettings;
  readonly choice: Slipped['choice'];
  readonly answer: PlacementUncertainty;
}
/** Whether draws still speak of a replica as it is placed now. */
export const isOf = (drawn: Drawn, now: Slipped): boolean =>
  drawn.of === now.placement && drawn.choice === now.choice;
