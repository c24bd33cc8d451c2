import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchMethods, batchReferences } from '../../../api/domain/report/batch-methods.ts';

describe('the methods of a batch', () => {
  it('cite what they list and count the tiles', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 500 }), (tiles) => {
        const words = batchMethods({ tiles, version: '1' });
        for (const { key } of batchReferences()) expect(words).toContain(key);
        expect(words).toContain(`The paint of ${tiles} tiles`);
      }),
    );
  });
  it('give the report of the standard atomic weights of 2021 by its DOI', () => {
    expect(batchReferences().map(({ doi }) => doi)).toEqual(['10.1515/pac-2019-0603']);
  });
  it('speak of no tile where there is none', () => {
    expect(batchMethods({ tiles: 0, version: '1' })).not.toContain('tile');
  });
});
