import { useMemo } from 'react';
import type { Tile } from '../../../../api/contract/tile.ts';
import type { TrialAnswer, TrialAsked } from '../../../../api/contract/trial.ts';
import type { TrialFigureFile } from '../../../../api/contract/trial-figure.ts';
import type { TrialAnalysis } from '../../../../api/domain/trials/types.ts';
import { effectsCaption, zonesCaption } from '../../../../api/figures/captions-trial.ts';
import { effectsData } from '../../../../api/figures/effects-data.ts';
import { effectsHeight } from '../../../../api/figures/effects-layout.ts';
import { effectsPlot } from '../../../../api/figures/effects-plot.ts';
import { type LyingTile, zonesData } from '../../../../api/figures/zones-data.ts';
import { zonesHeight, zonesPlot } from '../../../../api/figures/zones-plot.ts';
import { CaptionedFigure } from '../../../parts/figure/CaptionedFigure.tsx';
import { FileChoices, type FileSheet } from '../../../parts/figure/FileChoices.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { trialFigure } from '../../../queries/figures.ts';
import { useTiles } from '../../../queries/fire.ts';

/** Each factor's effect with its interval; nothing where there is no effect to draw. */
export function EffectsFigure({ found }: { readonly found: TrialAnswer }) {
  const data = useMemo(
    () => (found.effects.length > 0 ? effectsData(found as TrialAnalysis, { id: 'effects-plot' }) : null),
    [found],
  );
  if (data === null) return null;
  return (
    <CaptionedFigure figure={effectsPlot} height={effectsHeight} data={data} caption={effectsCaption(data)} />
  );
}

/** The tiles as they lie, each zone with its gloss. */
export function ZonesSection(at: { readonly study: string; readonly without: readonly string[] }) {
  const tiles = useTiles(at.study);
  return (
    <section className="stack" aria-labelledby="zones-lie">
      <h2 id="zones-lie">The zones as they lie</h2>
      <Loaded query={tiles} what="the tiles">
        {(rows) => <Kept rows={rows} without={at.without} />}
      </Loaded>
    </section>
  );
}

function Kept({ rows, without }: { readonly rows: readonly Tile[]; readonly without: readonly string[] }) {
  const tiles = useMemo(() => rows.filter(({ id }) => !without.includes(id)), [rows, without]);
  return <ZonesFigure tiles={tiles} />;
}

export const hasPlace = ({ zones, pictures }: LyingTile) =>
  zones.some(
    ({ row, picture, outline }) =>
      row !== null || (outline !== null && pictures.some(({ id }) => id === picture)),
  );

export function ZonesFigure({ tiles }: { readonly tiles: readonly LyingTile[] }) {
  const data = useMemo(() => (tiles.some(hasPlace) ? zonesData(tiles, 'zones-plot') : null), [tiles]);
  if (data === null) return <p className="faint">No zone has a place on a grid or on a picture yet.</p>;
  return <CaptionedFigure figure={zonesPlot} height={zonesHeight} data={data} caption={zonesCaption(data)} />;
}

/** The figures of what mattered by the names they go by. */
export const TRIAL_FILES = [
  { id: 'zones', label: 'Zones' },
  { id: 'effects', label: 'Effects' },
  { id: 'chance', label: 'Chance' },
] as const;

/** The figures of this page as files. */
export function TrialFiles({
  study,
  asked,
  against,
}: {
  readonly study: string;
  readonly asked: TrialAsked;
  readonly against: string;
}) {
  const fetch = (file: string, sheet: FileSheet) =>
    trialFigure(study, file as TrialFigureFile, { ...asked, against, sheet });
  const figures = TRIAL_FILES.filter(({ id }) => id !== 'chance' || asked.outcome !== 'share');
  return (
    <section className="stack" aria-labelledby="trial-files">
      <h2 id="trial-files">Figures as files</h2>
      <FileChoices figures={figures} from={{ fetch }} />
    </section>
  );
}
