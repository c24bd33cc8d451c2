import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scoresPlot } from '../../api/figures/scores-plot.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { drawn, idsIn, middleOf, numbersIn, piecesOf, rulerOf } from './drawing.ts';
import { sampleScores } from './sample-scores.ts';

const data = sampleScores({ groups: 4, each: 12, replicas: 3 });
const rings = (svg: SVGSVGElement) =>
  [...svg.querySelectorAll('g[clip-path] .replica')].map((mark) => mark.querySelector('circle')!);

describe('the scores plot', () => {
  const { svg, text } = drawn(scoresPlot, data);
  const [x, y] = [rulerOf(svg, 'x'), rulerOf(svg, 'y')];

  it('puts every reference where its scores are, read off the axes', () => {
    const square = data.groups.findIndex(({ slot }) => slot === 2);
    const path = [...svg.querySelectorAll('.references')][square]!.getAttribute('d')!;
    const read = piecesOf(path).map((piece) => middleOf(piece));
    data.groups[square]!.points.forEach((point, i) => {
      expect(x(read[i]![0])).toBeCloseTo(point.x, 1);
      expect(y(read[i]![1])).toBeCloseTo(point.y, 1);
    });
  });
  it('puts every replica where its scores are, the chosen one last and in the accent', () => {
    const drawnRings = rings(svg);
    const order = [...data.replicas].sort((a, b) => Number(a.chosen) - Number(b.chosen));
    order.forEach((replica, i) => {
      expect(x(Number(drawnRings[i]!.getAttribute('cx')))).toBeCloseTo(replica.x, 6);
      expect(y(Number(drawnRings[i]!.getAttribute('cy')))).toBeCloseTo(replica.y, 6);
    });
    expect(drawnRings.map((ring) => ring.getAttribute('stroke') === THEMES['page-light'].accent)).toEqual([
      false,
      false,
      true,
    ]);
  });
  it('draws one path a group, whatever the number of sherds', () => {
    const many = drawn(scoresPlot, sampleScores({ groups: 10, each: 500, replicas: 1 })).svg;
    expect(many.querySelectorAll('.references').length).toBe(10);
    expect(many.querySelectorAll('*').length).toBeLessThan(200);
  });
  it('draws ellipses through the ends of their semi-axes', () => {
    const drawnEllipses = [...svg.querySelectorAll('g[clip-path] > ellipse')];
    expect(drawnEllipses.length).toBe(4);
    drawnEllipses.forEach((ellipse, g) => {
      const { centre, semiAxes, angle } = data.groups[g]!.ellipse!;
      const [cx, cy, turn] = numbersIn(ellipse.getAttribute('transform')!);
      for (const [axis, radius] of [
        ['rx', semiAxes[0]],
        ['ry', semiAxes[1]],
      ] as const) {
        const across = axis === 'rx' ? angle : angle + Math.PI / 2;
        const along = ((axis === 'rx' ? 0 : -90) + turn!) * (Math.PI / 180);
        const px = Number(ellipse.getAttribute(axis));
        expect(x(cx! + px * Math.cos(along))).toBeCloseTo(centre[0] + radius * Math.cos(across), 6);
        expect(y(cy! + px * Math.sin(along))).toBeCloseTo(centre[1] + radius * Math.sin(across), 6);
      }
    });
  });
  it('has one unit equally long both ways, at any size', { timeout: 30_000 }, () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 320, max: 1600 }),
        fc.integer({ min: 400, max: 1200 }),
        (width, height) => {
          const { svg: one } = drawn(scoresPlot, data, { width, height });
          const [across, up] = [rulerOf(one, 'x'), rulerOf(one, 'y')];
          expect(Math.abs(across(1) - across(0))).toBeCloseTo(Math.abs(up(1) - up(0)), 9);
        },
      ),
      { numRuns: 12 },
    );
  });
  it('shows the part of the plane that is asked for', () => {
    const { svg: part } = drawn(scoresPlot, { ...data, view: { x: [1, 3], y: [-2, 0] } });
    const plot = part.querySelector('clipPath rect')!;
    const [left, width] = [Number(plot.getAttribute('x')), Number(plot.getAttribute('width'))];
    const middle = rulerOf(part, 'x')(left + width / 2);
    expect(middle).toBeCloseTo(2, 6);
  });
  it('names its axes by component and share of variance', () => {
    const titles = [...svg.querySelectorAll('.axis-title')].map((title) => title.textContent);
    expect(titles).toEqual(['PC1 · 62.4 % of the variance', 'PC2 · 18.3 % of the variance']);
  });
  it('names sherds where they are few, and leaves a crowd of thousands unnamed until one comes nearer', () => {
    const names = (wish: typeof data) =>
      [...drawn(scoresPlot, wish).svg.querySelectorAll('.names text')].map((text) => text.textContent);
    const few = names({ ...data, naming: 'everything', loadings: null });
    expect(few.filter((name) => name!.startsWith('S-')).length).toBeGreaterThan(20);
    const crowd = {
      ...sampleScores({ groups: 4, each: 500, replicas: 0 }),
      naming: 'everything',
      loadings: null,
    } as const;
    expect(names(crowd)).toEqual([]);
    const { x, y } = crowd.groups[0]!.points[0]!;
    const near = { x: [x - 0.2, x + 0.2], y: [y - 0.2, y + 0.2] } as const;
    expect(names({ ...crowd, view: near })).toContain(crowd.groups[0]!.points[0]!.label);
  });
  it('draws loadings only when asked, from the origin and in proportion', () => {
    const tips = [...svg.querySelectorAll('.loading')].map((arrow) => numbersIn(arrow.getAttribute('d')!));
    expect(tips.length).toBe(data.loadings!.length);
    const lengths = tips.map(([x0, y0, x1, y1]) => Math.hypot(x1! - x0!, y1! - y0!));
    data.loadings!.forEach((loading, i) => {
      const ratio = Math.hypot(loading.x, loading.y) / Math.hypot(data.loadings![0]!.x, data.loadings![0]!.y);
      expect(lengths[i]! / lengths[0]!).toBeCloseTo(ratio, 6);
    });
    expect(drawn(scoresPlot, { ...data, loadings: null }).svg.querySelector('.loading')).toBeNull();
  });
  it('draws a replica’s cloud, ellipse and way where the data has them', () => {
    const [first, ...rest] = data.replicas;
    const uncertain = {
      ...first!,
      cloud: [
        [0, 0],
        [0.5, 0.5],
      ] as const,
      ellipse: { centre: [0, 0], semiAxes: [1, 0.5], angle: 0 } as const,
      path: [
        [0, 0],
        [1, 1],
        [2, 0],
      ] as const,
    };
    const { svg: one } = drawn(scoresPlot, { ...data, replicas: [uncertain, ...rest] });
    expect(piecesOf(one.querySelector('.cloud')!.getAttribute('d')!).length).toBe(2);
    const way = numbersIn(one.querySelector('.way')!.getAttribute('d')!);
    expect(rulerOf(one, 'x')(way[2]!)).toBeCloseTo(1, 2);
    expect(one.querySelectorAll('g[clip-path] > ellipse').length).toBe(5);
  });
  it('is the same file for the same data, ids unique and led by the figure’s own', () => {
    expect(drawn(scoresPlot, data).text).toBe(text);
    const ids = idsIn(text);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.every((id) => id.startsWith('scores-'))).toBe(true);
    const other = idsIn(drawn(scoresPlot, { ...data, id: 'second' }).text);
    expect(ids.filter((id) => other.includes(id))).toEqual([]);
  });
  it('draws an empty plane when there is nothing to show', () => {
    const { svg: empty } = drawn(scoresPlot, sampleScores({ groups: 0, each: 0, replicas: 0 }));
    expect(empty.querySelectorAll('.axis .tick').length).toBeGreaterThan(2);
  });
  it('writes no NaN, in any theme', () => {
    for (const theme of Object.values(THEMES))
      expect(drawn(scoresPlot, data, { theme }).text).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('the file of a figure', () => {
  const small = sampleScores({ groups: 1, each: 2, replicas: 1 });
  it('is well-formed XML to a strict parser and to a renderer, whatever a label holds', {
    timeout: 60_000,
  }, () => {
    const nasty = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.constantFrom(
        '<script>alert(1)</script>',
        ']]>',
        '&amp;"\'',
        '\u0000\u0008\uFFFE',
        '\uD800',
        '=1+1',
        '</svg>',
      ),
    );
    fc.assert(
      fc.property(nasty, (label) => {
        const named = { ...small, title: label, groups: [{ ...small.groups[0]!, name: label }] };
        const { text } = drawn(scoresPlot, { ...named, replicas: [{ ...small.replicas[0]!, label }] });
        expect(idsIn(text).length).toBeGreaterThan(0);
        expect(text).not.toContain('<script');
        expect(new Resvg(text, { font: { loadSystemFonts: false } }).width).toBe(760);
      }),
      { numRuns: 40 },
    );
  });
});
