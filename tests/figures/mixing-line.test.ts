import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FORMATS, grown } from '../../api/export/formats.ts';
import { mixingCaption } from '../../api/figures/captions-slip.ts';
import { type MixingSides, mixingData } from '../../api/figures/mixing-data.ts';
import { mixingHeight, mixingLine } from '../../api/figures/mixing-line.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { collisions, cutTexts } from './collisions.ts';
import { drawn, idsIn, rulerOf } from './drawing.ts';

const of = (value: number, sigma = 0.5) => ({
  ...{ value, limit: null, sigma, sigmaBasis: 'stated' as const, resolution: null },
});
const sides: MixingSides = {
  paint: { label: 'T1', spots: 3, amounts: { PbO: of(45), SiO2: of(45), Al2O3: of(10) } },
  slip: { label: 'slip of T1', spots: 2, amounts: { PbO: of(0), SiO2: of(70), Al2O3: of(30) } },
  f: 0.25,
  others: [{ label: 'T2', amounts: { PbO: of(50), SiO2: of(42), Al2O3: of(8) } }],
};
const data = mixingData(sides, { id: 'm', oxides: ['PbO', 'Al2O3'] });

describe('a mixing line', () => {
  it('puts slip, paint and what is left where the axes say, by (measured − f·slip)/(1 − f)', () => {
    const { svg } = drawn(mixingLine, data);
    const [lead, alumina] = [rulerOf(svg, 'x'), rulerOf(svg, 'y')];
    const line = svg.querySelector('.mixing')!;
    const end = (n: 1 | 2) => [
      lead(Number(line.getAttribute(`x${n}`))),
      alumina(Number(line.getAttribute(`y${n}`))),
    ];
    expect(end(1)[0]).toBeCloseTo(0, 1);
    expect(end(1)[1]).toBeCloseTo(30, 1);
    expect(end(2)[0]).toBeCloseTo(60, 1);
    expect(end(2)[1]).toBeCloseTo((10 - 0.25 * 30) / 0.75, 1);
  });

  it('holds paint, slip and what is left on one straight line until an oxide is spent', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.25, noNaN: true }), (f) => {
        const { slip, paint, drawnOff, end } = mixingData(
          { ...sides, f },
          { id: 'm', oxides: ['PbO', 'Al2O3'] },
        );
        const slope = (a: { x: number; y: number }, b: { x: number; y: number }) => (b.y - a.y) / (b.x - a.x);
        const flat = ({ x, y }: typeof slip) => ({ x: x.value, y: y.value });
        const whole = slope(flat(slip), flat(paint));
        expect(slope(flat(slip), end)).toBeCloseTo(whole, 9);
        expect(slope(flat(slip), flat(drawnOff!))).toBeCloseTo(whole, 9);
        expect(Math.min(end.x, end.y)).toBeGreaterThan(-1e-9);
      }),
    );
  });

  it('shows the oxides in which paint and slip lie furthest apart where none are asked for', () => {
    expect(mixingData(sides, { id: 'm', oxides: null }).oxides).toEqual(['PbO', 'SiO2']);
  });

  it('says n, share, what the line is and what bars mean in its caption', () => {
    const caption = mixingCaption(data);
    expect(caption).toContain('paint of T1 (n = 3 spots) and of the slip of T1 (n = 2 spots)');
    expect(caption).toContain('25.0 % slip drawn off');
    expect(caption).toContain('one standard uncertainty');
    expect(mixingCaption(mixingData({ ...sides, f: 0 }, { id: 'm', oxides: null }))).toContain(
      'No slip is drawn off',
    );
  });

  it.each(Object.values(FORMATS))('collides and runs off nowhere: $name', (sheet) => {
    const theme = THEMES[sheet.theme];
    const size = grown(sheet, mixingHeight(data, sheet.width, theme));
    const { svg, text } = drawn(mixingLine, data, { ...size, theme });
    expect(svg.querySelectorAll('.name')).toHaveLength(3);
    expect(collisions(svg)).toEqual([]);
    expect(cutTexts(svg)).toEqual([]);
    const ids = idsIn(text);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('is refused for oxides that are not there, and where more is drawn off than the paint holds', () => {
    const ask = (oxides: string[]) => () => mixingData(sides, { id: 'm', oxides });
    expect(ask(['PbO', 'PbO'])).toThrow(/two different oxides/);
    expect(ask(['PbO', 'MnO'])).toThrow(/MnO is not one/);
    expect(() => mixingData({ ...sides, f: 0.8 }, { id: 'm', oxides: null })).toThrow();
  });
});
