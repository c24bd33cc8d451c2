import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../api/domain/colour/ciede2000.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { contrast, labSeen, seen, VISIONS } from '../../scripts/palette/colour-difference.ts';
import { leastDistance } from '../../scripts/palette/search.ts';

describe('the measures of colour', () => {
  it('contrast is 21 of black on white (WCAG 2.2) and 1 of a colour on itself', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#767676', '#767676')).toBe(1);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });
  it('a grey looks the same with any cone missing', () => {
    for (const vision of VISIONS)
      for (const channel of seen('#808080', vision)) expect(channel).toBeCloseTo(128, 2);
  });
  it('red and green that differ plainly draw together without the red-sensitive cone', () => {
    const [red, green] = ['#b04040', '#6e6a30'];
    const apart = (vision: (typeof VISIONS)[number]) =>
      ciede2000(labSeen(red, vision), labSeen(green, vision));
    expect(apart('protan')).toBeLessThan(0.5 * apart('all cones'));
  });
});

describe.each(Object.values(THEMES))('theme $name', (theme) => {
  it('keeps colours at least 12 CIEDE2000 apart with a cone missing and 24 with all, ink and accent included', () => {
    const colours = [...theme.palette, theme.accent, theme.ink];
    for (const vision of VISIONS)
      expect(leastDistance(colours, vision)).toBeGreaterThan(vision === 'all cones' ? 24 : 12);
  });
  it('gives every mark a contrast of at least 3 to 1 on its background', () => {
    for (const colour of [...theme.palette, theme.accent])
      expect(contrast(colour, theme.background)).toBeGreaterThanOrEqual(3);
  });
  it('gives every text a contrast of at least 4.5 to 1', () => {
    for (const colour of [theme.ink, theme.faint])
      expect(contrast(colour, theme.background)).toBeGreaterThanOrEqual(4.5);
  });
  it('has at least eight colours, none twice', () => {
    expect(new Set(theme.palette).size).toBeGreaterThanOrEqual(8);
    expect(new Set(theme.palette).size).toBe(theme.palette.length);
  });
});

describe('the page', () => {
  const css = readFileSync(new URL('../../web/style/tokens.css', import.meta.url), 'utf8');
  const token = (name: string) =>
    new RegExp(`--${name}: light-dark\\((#\\w+), (#\\w+)\\)`).exec(css)!.slice(1);
  it('and its figures have one background and one ink, in light and in dark', () => {
    const of = (pick: 'background' | 'ink' | 'faint') => [
      THEMES['page-light'][pick],
      THEMES['page-dark'][pick],
    ];
    expect(of('background')).toEqual(token('sheet'));
    expect(of('ink')).toEqual(token('ink'));
    expect(of('faint')).toEqual(token('faint'));
  });
  it('has slides whose smallest type is at least 18 pt at full screen', () => {
    expect(THEMES.slide.fontSize).toBeGreaterThanOrEqual(18);
  });
});
