import { listInWords } from '../placement/words.ts';

/**
 * Tiles by their labels; `tile` is not said again before labels that begin with it.
 *
 * @example
 * tilesInWords(['T1', 'T2']) // 'tiles T1 and T2'
 * tilesInWords(['Tile 5']) // 'Tile 5'
 */
export function tilesInWords(labels: readonly string[]): string {
  const list = listInWords(labels);
  if (labels.every((label) => /^tiles?\b/i.test(label))) return list;
  return `${labels.length === 1 ? 'tile' : 'tiles'} ${list}`;
}

/**
 * The firings that tiles came from, to stand within a clause after their number; 0 where nobody noted one.
 *
 * @example
 * fromFirings(2) // ' from 2 firings'
 * fromFirings(0) // ' (no firing noted)'
 */
export function fromFirings(n: number): string {
  return n === 0 ? ' (no firing noted)' : ` from ${n} firing${n === 1 ? '' : 's'}`;
}
