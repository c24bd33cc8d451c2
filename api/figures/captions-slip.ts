import { chemical } from './chemical.ts';
import type { MixingData } from './mixing-data.ts';
import { numeral } from './text.ts';

const many = (n: number) => `n = ${n} ${n === 1 ? 'spot' : 'spots'}`;

/** The caption of a mixing line: n, basis, share drawn off and how, errors, what the line is. */
export function mixingCaption(data: MixingData): string {
  const [x, y] = data.oxides.map(chemical);
  const { slip, paint, spots, drawnOff, f, others } = data;
  return [
    `${y} against ${x} of the paint of ${paint.label} (${many(spots.paint)}) and of the ${slip.label.replace(/^slip/, 'slip')} (${many(spots.slip)})${others.length > 0 ? `, with ${others.length === 1 ? 'one other tile' : `${others.length} other tiles`}` : ''}, in wt% of all oxides measured, closed to 100.`,
    'Line: where mixtures of this slip and what it is mixed with lie, by mass; broken: what more drawing off would leave.',
    ...(drawnOff
      ? [`Full mark: the paint with ${numeral(100 * f, 1)} % slip drawn off, (measured − f·slip)/(1 − f).`]
      : ['No slip is drawn off.']),
    'Bars: one standard uncertainty, as stated, found from spots, or assumed by technique; below detection, from nothing to the limit.',
  ].join(' ');
}
