import type { Comparison } from '../../../../api/contract/placement.ts';
import type { Slip } from './useSlip.ts';

/** What every part of the slip panel is given. */
export interface SlipSectionProps {
  readonly slip: Slip;
  readonly result: Comparison;
  readonly replica: { readonly id: string; readonly label: string };
}
