import { describe, expect, it } from 'vitest';
import { FORMATS, grown } from '../../api/export/formats.ts';
import { zonesCaption } from '../../api/figures/captions-trial.ts';
import { hatchPath } from '../../api/figures/hatch.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { type LyingTile, zonesData } from '../../api/figures/zones-data.ts';
import { zonesHeight, zonesPlot } from '../../api/figures/zones-plot.ts';
import { contrast } from '../../scripts/palette/colour-difference.ts';
import { collisions, cutTexts } from './collisions.ts';
import { drawn, idsIn, numbersIn } from './drawing.ts';

const blank = { picture: null, outline: null, micrometres: null, glassyShare: null };
const gridTile = (label: string, firingName: string): LyingTile => ({
  ...{ label, firing: firingName, firingName, rows: 2, columns: 3, pictures: [] },
  settings: { 'lead roast': 'once', 'PbO as weighed (wt%)': 49 },
  zones: ['A1', 'B1', 'C1', 'A2', 'B2', 'C2'].map((name, i) => ({
    ...{ ...blank, label: name, row: 1 + Math.floor(i / 3), column: 1 + (i % 3), coats: i + 1 },
    grade: (['matt', 'satin', 'glossy', null] as const)[i % 4]!,
  })),
});
const square = [
  [0.1, 0.1],
  [0.9, 0.1],
  [0.9, 0.9],
  [0.1, 0.9],
] as const;
const pot: LyingTile = {
  ...{ label: 'Pot', firing: null, firingName: null, rows: 0, columns: 0, settings: {} },
  pictures: [{ id: 'p', width: 400, height: 200 }],
  zones: [
    {
      ...blank,
      label: 'belly',
      row: null,
      column: null,
      coats: 2,
      grade: 'glossy',
      picture: 'p',
      outline: square,
    },
    { ...blank, label: 'lost', row: null, column: null, coats: 2, grade: 'matt' },
  ],
};
const nine = Array.from({ length: 9 }, (_, i) => gridTile(`Tile ${i + 1}`, i < 5 ? 'Firing 1' : 'Firing 2'));

describe('the zones of tiles as they lie', () => {
  it('stand in rows and columns as on the tile, each with its gloss as fill or hatching and as a word', () => {
    const { svg } = drawn(zonesPlot, zonesData([gridTile('Tile 1', 'F')], 'z'));
    const zones = [...svg.querySelectorAll('.zone')];
    expect(zones.map((zone) => zone.getAttribute('class'))).toEqual(
      ['matt', 'satin', 'glossy', 'not-judged', 'matt', 'satin'].map((grade) => `zone ${grade}`),
    );
    const corner = (i: number) => numbersIn(zones[i]!.querySelector('path')!.getAttribute('d')!).slice(0, 2);
    expect(corner(1)[1]).toBe(corner(0)[1]);
    expect(corner(1)[0]).toBeGreaterThan(corner(0)[0]!);
    expect(corner(3)[0]).toBe(corner(0)[0]);
    expect(corner(3)[1]).toBeGreaterThan(corner(0)[1]!);
    expect(zones.map((zone) => zone.querySelectorAll('.hatch').length)).toEqual([0, 1, 0, 0, 0, 1]);
    expect(zones[1]!.textContent).toContain('satin');
    expect(zones[1]!.textContent).toContain('2 coats');
  });

  it('keep the shape they have on their picture', () => {
    const { svg } = drawn(zonesPlot, zonesData([pot], 'z'));
    const [left, top, right, , , bottom] = numbersIn(svg.querySelector('.zone path')!.getAttribute('d')!);
    expect((right! - left!) / (bottom! - top!)).toBeCloseTo(2, 1);
    expect(svg.querySelectorAll('.zone')).toHaveLength(1);
  });

  it('are counted in the caption by grade, with tiles, firings and what is not shown', () => {
    const caption = zonesCaption(zonesData([...nine, pot], 'z'));
    expect(caption).toContain('55 zones of 10 tiles');
    expect(caption).toContain('18 matt, 18 satin, 10 glossy, 9 not judged');
    expect(caption).toContain('; 9 tiles fired in Firing 1 and Firing 2; no firing noted for tile Pot.');
    expect(caption).toContain('1 zone without a place');
    expect(caption).toContain('common practice, no published source');
  });

  it('are not said to be fired before they are', () => {
    const bare = ({ zones, ...tile }: LyingTile, label: string): LyingTile => ({
      ...{ ...tile, label, firing: null, firingName: null },
      zones: zones.map((zone) => ({ ...zone, grade: null })),
    });
    const two = [bare(nine[0]!, 'C1'), bare(nine[0]!, 'C2')];
    const caption = (tiles: readonly LyingTile[]) => zonesCaption(zonesData(tiles, 'z'));
    expect(caption([...nine, ...two])).toContain(
      '; 9 tiles fired in Firing 1 and Firing 2; not fired yet: tiles C1 and C2.',
    );
    expect(caption(two)).toMatch(/\(n: 12 not judged\); not fired yet: tiles C1 and C2\./);
    expect(caption(nine)).toContain('; fired in Firing 1 and Firing 2.');
  });

  it('are said to have a thickness only where one is noted', () => {
    const caption = (zones: LyingTile['zones']) => zonesCaption(zonesData([{ ...nine[0]!, zones }], 'z'));
    const { zones } = nine[0]!;
    expect(caption(zones)).toContain('; thickness is in coats of paint, as noted.');
    expect(caption(zones.map((zone) => ({ ...zone, coats: null })))).not.toContain('thickness');
  });

  it.each(Object.values(FORMATS))('collide and run off nowhere: $name', (sheet) => {
    for (const tiles of [nine.slice(0, 1), nine, [...nine, ...nine, pot]]) {
      const data = zonesData(tiles, 'z');
      const theme = THEMES[sheet.theme];
      const { width, height } = grown(sheet, zonesHeight(data, sheet.width, theme));
      const { svg, text } = drawn(zonesPlot, data, { width, height, theme });
      expect(collisions(svg)).toEqual([]);
      expect(cutTexts(svg)).toEqual([]);
      const ids = idsIn(text);
      expect(new Set(ids).size).toBe(ids.length);
      expect(text).not.toContain('NaN');
    }
  });

  it.each(Object.values(THEMES))(
    'are read with a contrast of at least 4.5 to 1 on a full zone: $name',
    (theme) => {
      const { svg } = drawn(zonesPlot, zonesData([gridTile('Tile 1', 'F')], 'z'), { theme });
      const zone = svg.querySelector('.zone.glossy')!;
      const [fill, ink] = ['path', 'text'].map((name) => zone.querySelector(name)!.getAttribute('fill')!);
      expect(contrast(ink!, fill!)).toBeGreaterThanOrEqual(4.5);
    },
  );

  it('are refused where no zone has a place', () => {
    const lost = { ...pot, pictures: [] };
    expect(() => zonesData([lost], 'z')).toThrow(/zones with a place on a grid or on a picture/);
  });
});

describe('hatching', () => {
  it('stays inside a hollow shape, its strokes equally far apart', () => {
    const hollow = [
      { x: 0, y: 0 },
      { x: 40, y: 0 },
      { x: 40, y: 40 },
      { x: 20, y: 10 },
      { x: 0, y: 40 },
    ];
    const strokes = hatchPath(hollow, 4).split('M').slice(1).map(numbersIn);
    expect(strokes.length).toBeGreaterThan(8);
    for (const [x1, y1, x2, y2] of strokes as [number, number, number, number][]) {
      expect((x1 - y1) / (4 * Math.SQRT2)).toBeCloseTo(Math.round((x1 - y1) / (4 * Math.SQRT2)), 1);
      const middle = { x: (x1 + x2) / 2, y: (y1 + y2) / 2 };
      const below = middle.x < 20 ? 40 - 1.5 * middle.x : 10 + 1.5 * (middle.x - 20);
      expect(middle.y).toBeLessThanOrEqual(below + 0.2);
    }
  });
});
