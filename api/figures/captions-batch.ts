import { listInWords } from '../domain/placement/words.ts';
import type { BatchData } from './batch-data.ts';
import { chemical } from './chemical.ts';
import { numeral } from './text.ts';

/** The caption of a batch beside its tiles: n, what is closed over what, what bars mean, what is not shown. */
export function batchCaption(data: BatchData): string {
  const { batch, celsius, tiles, target, rows, leftOut, hiddenRows } = data;
  const beside = [
    ...tiles.map(
      ({ label, spots }) => `the paint of ${label} (n = ${spots} ${spots === 1 ? 'spot' : 'spots'})`,
    ),
    ...(target === null ? [] : [`the target, ${target}`]),
  ];
  return [
    `${batch} as its materials let one expect after ${numeral(celsius, 0)} °C, beside ${listInWords(beside)}, in wt% closed to 100 on ${rows.length + hiddenRows} oxides, on a logarithmic scale.`,
    'Bars: of the prediction, what sulfur, purity and roast leave open and one standard deviation beyond; of a tile, one standard deviation as stated or assumed by technique.',
    ...(tiles.length > 0
      ? ['Slip read along with the paint is not drawn off. What no material is known to hold counts as none.']
      : []),
    ...(target === null ? [] : ['The target is scaled to the oxides that it names.']),
    ...(leftOut.length > 0 && tiles.length > 0
      ? [`Not measured, so not compared: ${listInWords(leftOut.map(chemical))}.`]
      : []),
    ...(hiddenRows > 0 ? [`The ${hiddenRows} scarcest oxides are not shown.`] : []),
  ].join(' ');
}
