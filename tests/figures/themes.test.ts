import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { THEMES } from '../../api/figures/themes.ts';
import { ciede2000 } from '../../scripts/palette/ciede2000.ts';
import { contrast, labSeen, seen, VISIONS } from '../../scripts/palette/colour-difference.ts';
import { leastDistance } from '../../scripts/palette/search.ts';

/** Sharma, Wu & Dalal 2005, Color Res. Appl. 30:21–30, table 1, doi 10.1002/col.20070 (a selection of its 34 pairs). */
const SHARMA = [
  [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [[50, 3.1571, -77.2803], [50, 0, -82.7485], 2.8615],
  [[50, -1.3802, -84.2814], [50, 0, -82.7485], 1.0],
  [[50, 0, 0], [50, -1, 2], 2.3669],
  [[50, 2.49, -0.001], [50, -2.49, 0.0009], 7.1792],
  [[50, 2.49, -0.001], [50, -2.49, 0.0011], 7.2195],
  [[50, -0.001, 2.49], [50, 0.0009, -2.49], 4.8045],
  [[50, 2.5, 0], [50, 0, -2.5], 4.3065],
  [[50, 2.5, 0], [73, 25, -18], 27.1492],
  [[50, 2.5, 0], [56, -27, -3], 31.903],
  [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
  [[63.0109, -31.0961, -5.8663], [62.8187, -29.7946, -4.0864], 1.263],
  [[22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 2.0373],
  [[90.8027, -2.0831, 1.441], [91.1528, -1.6435, 0.0447], 1.4441],
  [[6.7747, -0.2908, -2.4247], [5.8714, -0.0985, -2.2286], 0.6377],
  [[2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
] as const;

describe('the measures of colour', () => {
  it('CIEDE2000 agrees with the published pairs to their four decimals, both ways round', () => {
    for (const [one, other, distance] of SHARMA) {
      expect(ciede2000(one, other)).toBeCloseTo(distance, 4);
      expect(ciede2000(other, one)).toBeCloseTo(distance, 4);
    }
  });
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
