import type { FigureSheet } from '../contract/figure.ts';
import { type BatchSides, batchData } from '../figures/batch-data.ts';
import { batchHeight, batchPlot, batchRowsThatFit } from '../figures/batch-plot.ts';
import { batchCaption } from '../figures/captions-batch.ts';
import { THEMES } from '../figures/themes.ts';
import { FORMATS } from './formats.ts';
import { type Prepared, prepared } from './prepared.ts';

/** Sets up a batch beside its tiles on its sheet; a slide shows as many oxides as stand apart on it. */
export function prepareBatchFigure(sides: BatchSides, look: FigureSheet): Prepared {
  const all = batchData(sides, { id: 'batch' });
  const { theme, width, height } = FORMATS[look.format];
  const most = batchRowsThatFit(all, { width, height, theme: THEMES[theme] });
  const data = theme === 'slide' ? batchData(sides, { id: 'batch', most }) : all;
  return prepared(batchPlot, data, { look, caption: batchCaption(data), height: batchHeight });
}
