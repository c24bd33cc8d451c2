import type { FigureSheet, TrialFigure } from '../contract/figure.ts';
import type { ChanceCurve, TrialAnalysis } from '../domain/trials/types.ts';
import { chanceCaption, effectsCaption, zonesCaption } from '../figures/captions-trial.ts';
import { chanceHeight, chancePlot } from '../figures/chance-plot.ts';
import { effectsData } from '../figures/effects-data.ts';
import { effectsHeight, rowsThatFit } from '../figures/effects-layout.ts';
import { effectsPlot } from '../figures/effects-plot.ts';
import { THEMES } from '../figures/themes.ts';
import { type LyingTile, zonesData } from '../figures/zones-data.ts';
import { zonesHeight, zonesPlot } from '../figures/zones-plot.ts';
import { FORMATS } from './formats.ts';
import { type Prepared, prepared } from './prepared.ts';

/** What a figure of a trial is drawn from, fetched only where it is asked for. */
export interface TrialSources {
  readonly tiles: () => Promise<readonly LyingTile[]>;
  readonly analysis: () => Promise<TrialAnalysis>;
  readonly curve: () => Promise<ChanceCurve>;
}

/** Sets up one figure of a trial on its sheet; throws where the zones have nothing to show. */
export function prepareTrialFigure(
  sources: TrialSources,
  name: TrialFigure,
  sheet: FigureSheet,
): Promise<Prepared> {
  return PREPARE[name](sources, sheet);
}

const PREPARE: Record<TrialFigure, (sources: TrialSources, look: FigureSheet) => Promise<Prepared>> = {
  async zones({ tiles }, look) {
    const data = zonesData(await tiles(), 'zones');
    return prepared(zonesPlot, data, { look, caption: zonesCaption(data), height: zonesHeight });
  },
  async effects({ analysis }, look) {
    const data = effectsOf(await analysis(), look);
    return prepared(effectsPlot, data, { look, caption: effectsCaption(data), height: effectsHeight });
  },
  async chance({ curve }, look) {
    const found = await curve();
    const data = { id: 'chance', curve: found, title: `Chance of a ${found.of} zone` };
    return prepared(chancePlot, data, { look, caption: chanceCaption(found), height: chanceHeight });
  },
};

/** A slide shows as many effects as stand apart on it; the caption says how many are not shown. */
function effectsOf(analysis: TrialAnalysis, { format }: FigureSheet) {
  const all = effectsData(analysis, { id: 'effects' });
  const { theme, width, height } = FORMATS[format];
  if (theme !== 'slide') return all;
  return effectsData(analysis, {
    id: 'effects',
    most: rowsThatFit(all, { width, height, theme: THEMES[theme] }),
  });
}
