import { METHOD_REFERENCES, type MethodReference } from './references.ts';

/**
 * How a batch was predicted and set beside tiles, as a paragraph of plain scientific English. `batchReferences` lists
 * what it cites.
 *
 * @example
 * batchMethods({ tiles: 2, version: '1' }).includes('2 tiles') // true
 * batchMethods({ tiles: 0, version: '1' }).includes('analyses as reported') // false
 */
export function batchMethods({
  tiles,
  version,
}: {
  readonly tiles: number;
  readonly version: string;
}): string {
  return [
    'The fired composition of the batch was reckoned from the weighed materials and their analyses by mass balance, with the standard atomic weights of 2021 (Prohaska et al. 2022); water, carbonates and sulfur leave as the fire is stated, and the range that sulfur kept, purity and roast leave open is carried as bounds.',
    ...(tiles > 0
      ? [
          `The paint of ${tiles === 1 ? 'one tile' : `${tiles} tiles`} was converted from analyses as reported to oxides with the same weights, closed to 100 wt% and averaged over spots; prediction and tiles were closed to 100 again on the oxides measured on every tile. Values below detection stand at 0.65 of their limit.`,
        ]
      : []),
    `Computed with Nearsherd ${version}.`,
  ].join(' ');
}

/**
 * What the reckoning of a batch cites.
 *
 * @example
 * batchReferences().map((one) => one.key) // ['Prohaska et al. 2022']
 */
export const batchReferences = (): MethodReference[] => [METHOD_REFERENCES.atomicWeights];
