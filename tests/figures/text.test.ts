import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { chemical } from '../../api/figures/chemical.ts';
import { fitText, numeral, textWidth } from '../../api/figures/text.ts';

const openFont = (folder: string) => {
  const path = `@expo-google-fonts/source-sans-3/${folder}/SourceSans3_${folder}.ttf`;
  return fontkit.openSync(fileURLToPath(import.meta.resolve(path))) as fontkit.Font;
};
const fonts = { regular: openFont('400Regular'), semibold: openFont('600SemiBold') };

describe('text', () => {
  it.each([
    'Tile 14',
    'Fe₂O₃',
    'PC1 · 62.4 % of the variance',
    'Grès de Thêta',
    'Ράχη',
    'Кувшин',
    '−0.35',
    'WAVE',
  ])('is as wide as the font lays it out, within 3 %%: %s', (text) => {
    for (const weight of ['regular', 'semibold'] as const) {
      const font = fonts[weight];
      const laid = (font.layout(text).advanceWidth * 13) / font.unitsPerEm;
      expect(Math.abs(textWidth(text, 13, weight) / laid - 1)).toBeLessThan(0.03);
    }
  });
  it('in a script the font lacks takes a full em a letter', () => {
    expect(textWidth('青磁', 10)).toBe(20);
  });
  it('that is too wide is cut with an ellipsis and then fits', () => {
    const cut = fitText('Sherd 1234 of the long-named north terrace', 13, 100);
    expect(cut).toMatch(/^Sherd 1234 .*…$/);
    expect(textWidth(cut, 13)).toBeLessThanOrEqual(100);
    expect(fitText('short', 13, 100)).toBe('short');
  });
  it('writes numbers with a true minus, and no minus before nought', () => {
    expect(numeral(-1.25, 1)).toBe('−1.3');
    expect(numeral(-0.001, 1)).toBe('0.0');
  });
});

describe('a formula', () => {
  it.each([
    ['SiO2', 'SiO₂'],
    ['Fe2O3', 'Fe₂O₃'],
    ['Pb3O4', 'Pb₃O₄'],
    ['2PbCO3·Pb(OH)2', '2PbCO₃·Pb(OH)₂'],
    ['MnO', 'MnO'],
    ['LOI', 'LOI'],
  ])('%s is written %s', (plain, shown) => {
    expect(chemical(plain)).toBe(shown);
  });
  it('is written in letters both font files have', () => {
    for (const font of Object.values(fonts))
      for (const letter of '₀₁₂₃₄₅₆₇₈₉·×−±σ…')
        expect(font.hasGlyphForCodePoint(letter.codePointAt(0)!)).toBe(true);
  });
});
