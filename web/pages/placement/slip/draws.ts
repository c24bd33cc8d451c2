import type { SlipChoice } from '../../../../api/contract/slip-choice.ts';
import type { Sample } from '../../../../api/domain/composition/types.ts';
import type { ReferenceModel } from '../../../../api/domain/reference/types.ts';
import type { SlipShelf } from '../../../../api/domain/slip/slip-source.ts';
import { slipFor } from '../../../../api/domain/slip/slip-source.ts';
import type { Analysed } from '../../../../api/domain/slip/types.ts';
import { forgetAssumed } from '../../../../api/domain/uncertainty/forget-assumed.ts';
import type { UncertaintyRequest } from '../../../../api/domain/uncertainty/types.ts';

/** How the draws are made; `assumedRelative` null keeps each technique's own error. */
export interface DrawSettings {
  readonly draws: number;
  readonly seed: number;
  readonly assumedRelative: number | null;
}
export const USUAL_DRAWS: DrawSettings = { draws: 2000, seed: 1, assumedRelative: null };
export const drawsKey = (study: string): string => `draws.1.${study}`;

export interface Asked {
  readonly model: ReferenceModel;
  readonly request: UncertaintyRequest;
}

/** What a worker is asked, as the service would be. */
export function requestFor(
  sample: Sample,
  choice: SlipChoice | null,
  { shelf, settings }: { readonly shelf: SlipShelf; readonly settings: DrawSettings },
): UncertaintyRequest {
  const own = <Side extends Analysed>(side: Side): Side =>
    settings.assumedRelative === null ? side : { ...side, amounts: forgetAssumed(side.amounts) };
  const drawing = choice !== null && choice.f > 0 ? choice : null;
  const slip = drawing && {
    analysed: own(slipFor(drawing.source, sample, shelf)),
    fraction: { f: drawing.f, sigma: drawing.sigma, df: drawing.df, from: drawing.from },
  };
  return {
    sample: own(sample),
    slip,
    settings: { ...settings, unmeasured: drawing?.unmeasured === 'none' ? 'none' : 'refuse' },
  };
}
