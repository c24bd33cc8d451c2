import { describe, expect, it } from 'vitest';
import { nextOpen } from '../../../../web/pages/fire/sheet/next-zone.ts';

/** `a:m?` is a tile of one matt zone and one not judged. */
const tilesOf = (words: string) =>
  words.split(' ').map((word) => {
    const [id, grades] = word.split(':') as [string, string];
    return {
      id,
      zones: [...grades].map((grade, i) => ({ id: `${id}${i + 1}`, grade: grade === '?' ? null : grade })),
    };
  });
const from = (zone: string) => ({ tile: zone[0]!, zone });
const next = (words: string, at: string | null) =>
  nextOpen(tilesOf(words), at === null ? null : from(at))?.zone;

describe('the next zone to judge', () => {
  it('is the next open one of the tile, passing those judged', () => {
    expect(next('a:?m?? b:??', 'a1')).toBe('a3');
  });

  it('comes round to open ones before it on its tile, then goes on to the next tile and round to the first', () => {
    expect(next('a:?m? b:??', 'a3')).toBe('a1');
    expect(next('a:mm? b:m?', 'a3')).toBe('b2');
    expect(next('a:?m b:mm c:m?', 'c2')).toBe('a1');
  });

  it('is none when the one just judged was the last', () => {
    expect(next('a:mm b:m?', 'b2')).toBeUndefined();
    expect(next('a:mm', null)).toBeUndefined();
  });

  it('is the first open one to begin with', () => {
    expect(next('a:mm b:m?', null)).toBe('b2');
  });
});
