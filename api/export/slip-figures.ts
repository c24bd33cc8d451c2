import type { FigureSheet } from '../contract/figure.ts';
import { mixingCaption } from '../figures/captions-slip.ts';
import { type MixingSides, mixingData } from '../figures/mixing-data.ts';
import { mixingHeight, mixingLine } from '../figures/mixing-line.ts';
import { type Prepared, prepared } from './prepared.ts';

/** Sets up a mixing line on its sheet; throws where paint or slip lacks the oxides. */
export function prepareMixingLine(
  sides: MixingSides,
  { oxides, sheet }: { readonly oxides: readonly string[] | null; readonly sheet: FigureSheet },
): Prepared {
  const data = mixingData(sides, { id: 'mixing', oxides });
  return prepared(mixingLine, data, { look: sheet, caption: mixingCaption(data), height: mixingHeight });
}
