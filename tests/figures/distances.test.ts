import { lab } from 'd3';
import { describe, expect, it } from 'vitest';
import { dendrogramCaption, heatMapCaption } from '../../api/figures/captions-more.ts';
import { dendrogram, dendrogramHeight } from '../../api/figures/dendrogram.ts';
import { distancesData } from '../../api/figures/distances-data.ts';
import { heatMap, heatMapHeight, SHADES, shadesOf } from '../../api/figures/heat-map.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { GROUPS, IDS, R_SAYS } from '../support/romano-british.ts';
import { drawn, idsIn, numbersIn, piecesOf, rulerOf } from './drawing.ts';
import { romanoBritish } from './romano-british-model.ts';

const { model, placements } = romanoBritish();
const slots = { [GROUPS[0]]: 0, [GROUPS[1]]: 1, [GROUPS[2]]: 2 };
const look = { slots, chosen: 'tile0' };
const theme = THEMES['page-light'];
const sherds = distancesData(model, [], { id: 'tree', linkage: 'ward', ...look });
const sheet = { width: 760, height: Math.ceil(dendrogramHeight(sherds, 760, theme)) };

describe('a dendrogram', () => {
  const { svg } = drawn(dendrogram, sherds, sheet);
  // The key and the axis have texts too; names of specimens are those in the left margin.
  const names = [...svg.querySelectorAll(':scope > text')].map((text) => ({
    label: text.textContent!,
    y: Number(text.getAttribute('y')),
  }));
  it.each([
    ['ward', 'hclust_ward.D2'],
    ['average', 'hclust_average'],
  ] as const)('by %s names the sherds from top to bottom in the order R gives', (linkage, key) => {
    const tree = drawn(dendrogram, distancesData(model, [], { id: 'tree', linkage, ...look }), sheet).svg;
    const rows = [...tree.querySelectorAll(':scope > text')].map((text) => ({
      label: text.textContent!,
      y: Number(text.getAttribute('y')),
    }));
    const down = rows.sort((one, other) => one.y - other.y).map(({ label }) => label);
    expect(down).toEqual(R_SAYS[key].value.order.map((row: number) => IDS[row - 1]));
  });
  it('joins its branches at R’s heights, read off the axis', () => {
    const read = rulerOf(svg, 'x');
    const joins = svg.querySelector('.branches')!.getAttribute('d')!.split('M').slice(1);
    const heights = joins.map((join) => read(numbersIn(join.split('H')[1]!)[0]!));
    R_SAYS['hclust_ward.D2'].value.height.forEach((height: number, k: number) => {
      expect(heights[k]).toBeCloseTo(height, 1.5);
    });
  });
  it('has no two names in one another’s way', () => {
    const ys = names.map(({ y }) => y).sort((one, other) => one - other);
    for (let i = 1; i < ys.length; i++) expect(ys[i]! - ys[i - 1]!).toBeGreaterThanOrEqual(theme.fontSize);
  });
  it('leaves names out where rows are too close, and its caption says so', () => {
    const low = drawn(dendrogram, sherds, { width: 760, height: 400 }).svg;
    expect(low.querySelectorAll(':scope > text')).toHaveLength(0);
    expect(dendrogramCaption(sherds, model, false)).toContain('too many to be named');
    expect(dendrogramCaption(sherds, model, true)).toContain('Ward’s criterion');
  });
});

describe('a heat map of distances', () => {
  const data = distancesData(model, placements, { id: 'map', linkage: 'average', ...look });
  const { svg } = drawn(heatMap, data, { width: 600, height: heatMapHeight(data, 600, theme) });
  it('has one cell a pair, the darkest where the distance is the largest', () => {
    const cells = [...svg.querySelectorAll('.cells')];
    const counts = cells.map(
      (path) =>
        piecesOf(path.getAttribute('d')!.replaceAll(/h(-?[\d.]+)v([\d.]+)h-[\d.]+z/g, 'l$1,0l0,$2z')).length,
    );
    expect(counts.reduce((sum, n) => sum + n, 0)).toBe(48 ** 2);
    const most = Math.max(...data.distances);
    const wanted = Array.from({ length: SHADES }, () => 0);
    for (const distance of data.distances)
      wanted[Math.min(SHADES - 1, Math.floor((SHADES * distance) / most))]!++;
    cells.forEach((path, i) => {
      expect(counts[i]).toBe(wanted[Number(path.getAttribute('data-shade'))]);
    });
  });
  it('has Aitchison distances that sum to what R’s do', () => {
    const sum = sherds.distances.reduce((total, distance) => total + distance, 0) / 2;
    expect(sum).toBeCloseTo(R_SAYS.aitchison_dist_sum_lower_triangle.value, 8);
    expect(heatMapCaption(sherds, model)).toContain('Aitchison distance');
  });
  it.each(Object.values(THEMES))(
    'runs in lightness one way only, so that it reads without colour: $name',
    (one) => {
      const lightness = shadesOf(one).map((shade) => lab(shade).l);
      const way = Math.sign(lightness.at(-1)! - lightness[0]!);
      for (let i = 1; i < lightness.length; i++)
        expect(way * (lightness[i]! - lightness[i - 1]!)).toBeGreaterThan(0);
    },
  );
});

describe('figures of distances', () => {
  it('are well-formed, with unique ids, in every theme', () => {
    for (const one of Object.values(THEMES))
      for (const figure of [dendrogram, heatMap]) {
        const ids = idsIn(drawn(figure, sherds, { ...sheet, theme: one }).text);
        expect(new Set(ids).size).toBe(ids.length);
      }
  });
  it('refuse more specimens than can be told apart', () => {
    const many = Array.from({ length: 151 }, (_, i) => ({ ...model.members[0]!, id: String(i) }));
    const crowd = { ...model, members: many };
    expect(() => distancesData(crowd, [], { id: 'x', linkage: 'ward', ...look })).toThrow(
      'at most 150 specimens',
    );
  });
});
