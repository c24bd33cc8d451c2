import { describe, expect, it } from 'vitest';
import { predictChance } from '../../api/domain/trials/chance.ts';
import type { Zone } from '../../api/domain/trials/types.ts';
import { FORMATS, grown } from '../../api/export/formats.ts';
import { chanceHeight, chancePlot } from '../../api/figures/chance-plot.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { collisions, cutTexts } from './collisions.ts';
import { drawn, idsIn, numbersIn, rulerOf } from './drawing.ts';

const zones: Zone[] = ['T1', 'T2', 'T3'].flatMap((tile, k) =>
  [1, 2, 3, 4].map((coats) => ({
    ...{ id: `${tile}${coats}`, label: `A${coats}`, tile, tileLabel: tile, firing: 'F1', glassyShare: null },
    factors: { coats, air: coats % 2 === 0 ? 'smoky' : 'open' },
    grade: coats > 1 + k ? ('glossy' as const) : ('matt' as const),
  })),
);
const coats = { name: 'coats', kind: 'number', unit: 'coats', step: 1 } as const;
const air = { name: 'air', kind: 'category', base: null } as const;
const curveOf = (against: 'coats' | 'air') =>
  predictChance(zones, { factors: [coats, air], outcome: 'glossy', seed: 1, against, points: 5 });

describe('the plot of a chance', () => {
  it('draws the line where the axes say the chance is', () => {
    const curve = curveOf('coats');
    const { svg } = drawn(chancePlot, { id: 'c', curve });
    const pairs = numbersIn(svg.querySelector('.chance')!.getAttribute('d')!);
    const acrossOf = rulerOf(svg, 'x');
    expect(acrossOf(pairs[0]!)).toBeCloseTo(1, 1);
    expect(acrossOf(pairs.at(-2)!)).toBeCloseTo(4, 1);
    const ticks = [...svg.querySelectorAll('.axis.y .tick')].map((tick) => ({
      px: numbersIn(tick.getAttribute('transform')!)[1]!,
      share: Number.parseFloat(tick.textContent!) / 100,
    }));
    const [low, high] = [ticks[0]!, ticks.at(-1)!];
    const shareAt = (px: number) =>
      low.share + ((px - low.px) / (high.px - low.px)) * (high.share - low.share);
    expect(shareAt(pairs[1]!)).toBeCloseTo(curve.points[0]!.chance, 2);
    expect(shareAt(pairs.at(-1)!)).toBeCloseTo(curve.points.at(-1)!.chance, 2);
  });

  it('shows every zone, named, and a mark for each level of a factor in words', () => {
    const { svg } = drawn(chancePlot, { id: 'c', curve: curveOf('air') });
    expect(svg.querySelectorAll('.zones circle')).toHaveLength(12);
    expect(svg.querySelector('.zones title')!.textContent).toMatch(/T1 A1: not glossy/);
    expect(svg.querySelectorAll('circle.chance')).toHaveLength(2);
    expect(svg.querySelector('desc')!.textContent).toContain('From 12 zones');
  });

  it.each(Object.values(FORMATS))('collides and runs off nowhere: $name', (sheet) => {
    const theme = THEMES[sheet.theme];
    for (const against of ['coats', 'air'] as const) {
      const curve = curveOf(against);
      const data = { id: 'c', curve, title: 'Chance of a glossy zone' };
      const { svg } = drawn(chancePlot, data, {
        ...grown(sheet, chanceHeight(data, sheet.width, theme)),
        theme,
      });
      expect(collisions(svg)).toEqual([]);
      expect(cutTexts(svg)).toEqual([]);
    }
  });

  it('is well-formed in every theme and size, each id once', () => {
    for (const theme of Object.values(THEMES))
      for (const width of [238, 340, 960]) {
        const { text } = drawn(
          chancePlot,
          { id: 'c', curve: curveOf('coats') },
          { theme, width, height: 300 },
        );
        const ids = idsIn(text);
        expect(new Set(ids).size).toBe(ids.length);
        expect(text).not.toContain('NaN');
      }
  });
});
