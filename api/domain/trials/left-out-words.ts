import { listInWords } from '../placement/words.ts';
import { tilesInWords } from './tile-words.ts';

/** A zone that was left out; `tile` is missing from answers kept before it was told. */
export interface LeftOutZone {
  readonly zone: string;
  readonly tile?: string | undefined;
  readonly why: string;
}

/** So few are named, so that each can be found and mended; more are counted. */
const NAMED = 3;

/**
 * Zones left out, those with one reason together: named up to three, else counted with their tiles.
 *
 * @example
 * leftOutInWords([{ zone: 'T7 B2', tile: 'T7', why: 'coats not noted' }]) // ['T7 B2: coats not noted']
 * leftOutInWords(['A1', 'B1', 'C1', 'A2'].map((at) => ({ zone: `C1 ${at}`, tile: 'C1', why: 'no gloss grade noted yet' }))) // ['4 zones of tile C1: no gloss grade noted yet']
 */
export function leftOutInWords(leftOut: readonly LeftOutZone[]): string[] {
  return [...new Set(leftOut.map((one) => one.why))].map((why) => {
    const own = leftOut.filter((one) => one.why === why);
    const tiles = [...new Set(own.flatMap((one) => one.tile ?? []))];
    const named = own.length <= NAMED || tiles.length === 0;
    const which = named
      ? listInWords(own.map((one) => one.zone))
      : `${own.length} zones of ${tilesInWords(tiles)}`;
    return `${which}: ${why}`;
  });
}
