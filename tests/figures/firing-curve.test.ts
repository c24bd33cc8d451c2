import { describe, expect, it } from 'vitest';
import { type FiringCurveData, firingCurve } from '../../api/figures/firing-curve.ts';
import { THEMES } from '../../api/figures/themes.ts';
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
    expect(words).toContain('800 °C (790 to 810) at minute 90');
    expect(words).toContain('reducing to minute 50, oxidising to minute 150');
    expect(drawn(firingCurve, { ...data, readings: [] }).svg.querySelector('desc')!.textContent).toContain(
      'No reading by hand',
    );
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
});
