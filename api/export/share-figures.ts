import type { FigureLook } from '../contract/figure.ts';
import {
  BATCH_FIGURES,
  FIGURES,
  type FigureName,
  TRIAL_FIGURES,
  type TrialFigure,
} from '../contract/figure-names.ts';
import type { FrozenKind, SharedOf } from '../contract/shared.ts';
import { RequirementError } from '../domain/requirement.ts';
import type { ChanceCurve, TrialAnalysis } from '../domain/trials/types.ts';
import type { LyingTile } from '../figures/zones-data.ts';
import { prepareBatchFigure } from './batch-figures.ts';
import { prepareFigure } from './comparison-figures.ts';
import type { Prepared } from './prepared.ts';
import { prepareTrialFigure } from './trial-figures.ts';

/** What the figures of a share are drawn from. */
export type Drawable =
  | Pick<SharedOf<'placement'>, 'kind' | 'placement'>
  | Pick<SharedOf<'outcome'>, 'kind' | 'analysis' | 'curve' | 'tiles'>
  | Pick<SharedOf<'bench'>, 'kind' | 'name' | 'celsius' | 'result' | 'target' | 'tiles'>;
export type SharedFigure = FigureName | TrialFigure | 'fired';

const OF: Record<FrozenKind, readonly string[]> = {
  placement: FIGURES,
  outcome: TRIAL_FIGURES,
  bench: BATCH_FIGURES,
};

export const hasFigure = ({ kind }: Pick<Drawable, 'kind'>, name: SharedFigure): boolean =>
  OF[kind].includes(name);

/** Sets up a figure of what is shared, by the service and by a page that was saved as one file alike. */
export async function prepareSharedFigure(
  shared: Drawable,
  name: SharedFigure,
  look: FigureLook,
): Promise<Prepared> {
  if (shared.kind === 'placement') return prepareFigure(shared.placement.result, name as FigureName, look);
  if (shared.kind === 'outcome') return prepareTrialFigure(sourcesOf(shared), name as TrialFigure, look);
  const { celsius, result, target, tiles } = shared;
  return prepareBatchFigure({ name: shared.name, celsius, fired: result.fired, target, tiles }, look);
}

const sourcesOf = ({ analysis, curve, tiles }: Extract<Drawable, { kind: 'outcome' }>) => ({
  analysis: async () => analysis as TrialAnalysis,
  curve: async () => there(curve, 'no chance could be predicted from these zones') as ChanceCurve,
  tiles: async () => there(tiles, 'it was shared without its tiles') as LyingTile[],
});

function there<Value>(value: Value | null, why: string): Value {
  if (value === null) throw new RequirementError(`this figure needs what was not shared: ${why}`);
  return value;
}
