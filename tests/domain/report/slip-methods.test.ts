import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { slipMethods, slipReferences } from '../../../api/domain/report/slip-methods.ts';

describe('the methods of drawing slip off', () => {
  it('tell the share and cite what they list, whatever it is', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99 }), (percent) => {
        const words = slipMethods({ f: percent / 100, version: '1' });
        expect(words).toContain(`A share of ${percent} % slip`);
        for (const { key } of slipReferences()) expect(words).toContain(key);
      }),
    );
  });
  it('give the report of the standard atomic weights of 2021 by its DOI', () => {
    expect(slipReferences().map(({ doi }) => doi)).toEqual(['10.1515/pac-2019-0603']);
  });
  it('speak of no drawing off where nothing is', () => {
    expect(slipMethods({ f: 0, version: '1' })).not.toContain('drawn off');
  });
});
