import { describe, expect, it } from 'vitest';
import { carriedWords } from '../../../api/domain/uncertainty/carried.ts';
import { DEFAULT_UNCERTAINTY } from '../../../api/domain/uncertainty/types.ts';
import { sampleOf, stated } from './support.ts';

describe('what the draws carry', () => {
  const sample = {
    ...sampleOf('Tile 3', [50, 38, 4, 4, 4], 0.02),
    spots: 3,
    amounts: {
      PbO: stated(50, 1),
      SiO2: { ...stated(38, 1), sigmaBasis: 'spots' as const },
      Al2O3: { ...stated(4, 0.2), sigmaBasis: 'assumed' as const, resolution: 0.1 },
      Fe2O3: stated(4, null),
      CaO: { ...stated(0, null), value: null, limit: 0.1 },
    },
  };
  const words = (assumedRelative: number | null) =>
    carriedWords({ sample, slip: null, settings: { ...DEFAULT_UNCERTAINTY, assumedRelative } }, 0.65);

  it('names every source of error with its oxides, and tells assumed from stated', () => {
    expect(words(0.05)).toEqual([
      'Tile 3: ± as stated for PbO.',
      'Tile 3: scatter of 3 spots for SiO2.',
      'Tile 3: technique’s relative error assumed for Al2O3.',
      'Tile 3: 5 % assumed for Fe2O3 (common practice, no published source).',
      'Tile 3: rounding of the last digit for Al2O3.',
      'Tile 3: 0.3 to 1 of the detection limit for CaO.',
      'The references are taken as measured; their own scatter holds their errors.',
    ]);
    expect(words(null)[3]).toBe('Tile 3: no uncertainty known, taken as exact: Fe2O3.');
  });

  it('says whether the slip fraction is exact or carried', () => {
    const fraction = { f: 0.2, sigma: 0, df: null, from: 'stated' };
    const request = { sample, slip: { analysed: sample, fraction }, settings: DEFAULT_UNCERTAINTY };
    expect(carriedWords(request, 0.65)).toContain('Tile 3: anything from 0 to the detection limit for CaO.');
    expect(carriedWords(request, 0.65).at(-2)).toBe('Slip drawn off at f = 0.200, taken as exact (stated).');
  });
});
