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
