import { describe, expect, it } from 'vitest';
import { FORMATS, grown } from '../../api/export/formats.ts';
import { firingCurve, firingCurveHeight } from '../../api/figures/firing-curve.ts';
import {
  comparedCurvesData,
  type FiringCurveData,
  firingCurveData,
} from '../../api/figures/firing-curve-data.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { collisions, cutTexts } from './collisions.ts';
import { drawn, idsIn, numbersIn, rulerOf } from './drawing.ts';

const data: FiringCurveData = {
  ...{ id: 'f', name: 'Firing 1', marks: [600, 800] },
  stages: [
    { air: 'reducing', from: 0, to: 3000, note: null },
    { air: 'oxidising', from: 3000, to: 9000, note: null },
  ],
  curves: [
    {
      name: 'top',
      points: [
        { seconds: 0, celsius: 20 },
        { seconds: 6000, celsius: 820 },
        { seconds: 9000, celsius: 300 },
      ],
    },
  ],
  readings: [{ seconds: 5400, bounds: { value: 800, low: 790, high: 810 }, where: 'pot' }],
};

describe('the curve of a firing', () => {
  it('puts curve and readings where the axes say, with the bounds of a reading', () => {
    const { svg } = drawn(firingCurve, data);
    const [minute, celsius] = [rulerOf(svg, 'x'), rulerOf(svg, 'y')];
    const corners = numbersIn(svg.querySelector('.curve')!.getAttribute('d')!);
    expect(minute(corners[2]!)).toBeCloseTo(100, 0);
    expect(celsius(corners[3]!)).toBeCloseTo(820, 0);
    const bar = svg.querySelector('.reading line')!;
    expect(celsius(Number(bar.getAttribute('y1')))).toBeCloseTo(790, 0);
    expect(celsius(Number(bar.getAttribute('y2')))).toBeCloseTo(810, 0);
    expect(minute(Number(bar.getAttribute('x1')))).toBeCloseTo(90, 0);
  });

  it('says the hottest reading with its bounds, and the air, to those who cannot see it', () => {
    const words = drawn(firingCurve, data).svg.querySelector('desc')!.textContent!;
    expect(words).toContain('top: up to 820 °C at minute 100');
    expect(words).toContain('800 °C (790 to 810) at minute 90');
    expect(words).toContain('reducing to minute 50, oxidising to minute 150');
    expect(words).not.toContain('Not drawn');
    const open = drawn(firingCurve, { ...data, open: { air: 'smothered', from: 9000 } }).svg;
    expect(open.querySelector('desc')!.textContent).toContain(
      'Not drawn: smothered from 2:30 h, its end not noted.',
    );
    expect(
      drawn(firingCurve, { ...data, curves: [], readings: [] }).svg.querySelector('desc')!.textContent,
    ).toContain('No reading by hand');
  });

  const logged = (name: string, top: number, at: number) => ({
    ...{ name, points: [0, at, 9000].map((seconds, i) => ({ seconds, celsius: [20, top, 300][i]! })) },
    ...{ spikes: [], peak: { value: top, low: top - 9, high: top + 9, seconds: at } },
  });
  const close = [logged('top', 905, 6000), logged('bottom', 902, 6100), logged('pot by the flue', 899, 5900)];
  const readings = [5000, 5400, 6000].map((seconds) => ({
    ...{ seconds, bounds: { value: 880, low: 870, high: 890 }, where: 'pot' },
  }));
  const compared = comparedCurvesData('c', close);
  it.each(Object.values(FORMATS))('collides and runs off nowhere: $name', (sheet) => {
    const theme = THEMES[sheet.theme];
    for (const one of [data, { ...data, curves: close, readings }, compared]) {
      const size = grown(sheet, firingCurveHeight(one, sheet.width, theme));
      const { svg } = drawn(firingCurve, one, { ...size, theme });
      expect(collisions(svg)).toEqual([]);
      expect(cutTexts(svg)).toEqual([]);
    }
  });

  it('is well-formed in every theme and size, also with nothing in it', () => {
    const empty = { ...data, stages: [], curves: [], readings: [] };
    for (const theme of Object.values(THEMES))
      for (const one of [data, empty]) {
        const { text } = drawn(firingCurve, one, { theme, width: 238, height: 180 });
        const ids = idsIn(text);
        expect(new Set(ids).size).toBe(ids.length);
        expect(text).not.toContain('NaN');
      }
  });

  it('marks the peak with its error, spikes, gaps and chosen temperatures, and names channels at their lines', () => {
    const bounds = { value: 820, low: 813, high: 827 };
    const two = firingCurveData({
      ...{ id: 'f', name: 'Firing 1', stages: [], thresholds: [600], readings: [] },
      log: {
        gaps: [{ from: 2000, to: 4000 }],
        curves: ['top', 'bottom'].map((name, k) => ({
          name,
          points: [0, 1000, 2000, 4000, 6000, 8000].map((seconds, i) => ({
            seconds,
            celsius: [20, 200, 400, 700, 820, 500][i]! - 30 * k,
          })),
          spikes: k === 0 ? [{ seconds: 5000, celsius: 1400 }] : [],
        })),
      },
      summary: { channels: [{ name: 'top', peak: { ...bounds, seconds: 6000 } }] },
    });
    const { svg } = drawn(firingCurve, two);
    const [minute, celsius] = [rulerOf(svg, 'x'), rulerOf(svg, 'y')];
    const lines = [...svg.querySelectorAll('.curve')];
    expect(lines).toHaveLength(4);
    const looks = lines.map((one) =>
      [one.getAttribute('stroke'), one.getAttribute('stroke-dasharray')].join(),
    );
    expect(new Set(looks).size).toBe(2);
    expect(new Set(lines.map((one) => one.getAttribute('stroke-dasharray'))).size).toBe(2);
    const peak = svg.querySelector('.peak')!;
    expect(peak.querySelector('text')!.textContent).toBe('820 ± 7 °C');
    expect(celsius(Number(peak.querySelector('line')!.getAttribute('y2')))).toBeCloseTo(827, 0);
    const gap = svg.querySelector('.gap rect')!;
    expect(minute(Number(gap.getAttribute('x')))).toBeCloseTo(2000 / 60, 0);
    expect(svg.querySelector('.mark text')!.textContent).toBe('600 °C');
    expect(svg.querySelectorAll('.spike')).toHaveLength(1);
    const names = [...svg.querySelectorAll('.curve-name')];
    expect(names.map((one) => one.textContent)).toEqual(['top', 'bottom']);
    const [upper, lower] = names.map((one) => Number(one.getAttribute('y')));
    expect(lower! - upper!).toBeGreaterThan(12);
    expect(svg.querySelector('desc')!.textContent).toMatch(/top: peak 820.*No readings from minute 33 to 67/);
  });

  it('counts hours where a firing is long, and begins before lighting where the log does', () => {
    const points = [-3600, 0, 36_000].map((seconds) => ({ seconds, celsius: 400 }));
    const { svg } = drawn(firingCurve, { ...data, readings: [], curves: [{ name: 'top', points }] });
    const hour = rulerOf(svg, 'x');
    const corners = numbersIn(svg.querySelector('.curve')!.getAttribute('d')!);
    expect(hour(corners[0]!)).toBeCloseTo(-1, 0);
    expect(svg.textContent).toContain('Hours since the fire was lit');
  });

  it('names chosen temperatures where they have room, the hottest first, and draws every line', () => {
    const marks = [600, 790, 800];
    const { svg } = drawn(firingCurve, { ...data, marks }, { width: 340, height: 280 });
    const named = [...svg.querySelectorAll('.mark text')].map((one) => one.textContent);
    expect(named).toEqual(['800 °C', '600 °C']);
    expect(svg.querySelectorAll('.mark line')).toHaveLength(3);
  });
});
