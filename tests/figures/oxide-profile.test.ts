import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oxideProfile } from '../../api/figures/oxide-profile.ts';
import type { ProfileData } from '../../api/figures/profile-data.ts';
import { howFarOff, profileHeight } from '../../api/figures/profile-layout.ts';
import { logTicks } from '../../api/figures/profile-ticks.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { drawn, idsIn, numbersIn, piecesOf } from './drawing.ts';

const spread = { low: 0.5, high: 2, quartiles: [0.8, 1, 1.25] as const, each: [0.5, 0.8, 1, 1.25, 2] };
const data: ProfileData = {
  id: 'profile',
  title: 'Oxides of the sample',
  group: { name: 'Ware 1', slot: 0, n: 5 },
  basis: 'ratio',
  rows: [
    { oxide: 'PbO', spread, values: [0.25, 1], factor: 0.25, share: 0.9 },
    { oxide: 'SiO2', spread, values: [1.3, 1.1], factor: 1.3, share: 0.1 },
  ],
  replicas: [
    { id: 'a', label: 'Tile 1', chosen: true },
    { id: 'b', label: 'Tile 2', chosen: false },
  ],
};

/** px → value on a logarithmic axis, from two of its ticks. */
function logRuler(svg: SVGSVGElement) {
  const ticks = [...svg.querySelectorAll('.axis.x .tick')].map((tick) => ({
    px: numbersIn(tick.getAttribute('transform')!)[0]! - 0.5,
    log: Math.log(Number.parseFloat(tick.textContent!)),
  }));
  const [first, last] = [ticks[0]!, ticks.at(-1)!];
  return (px: number) =>
    Math.exp(first.log + ((px - first.px) * (last.log - first.log)) / (last.px - first.px));
}

describe('the oxide profile', () => {
  const { svg, text } = drawn(oxideProfile, data);
  const read = logRuler(svg);
  const row = svg.querySelector('.row[data-oxide="PbO"]')!;
  const ends = (selector: string) => {
    const line = row.querySelector(selector)!;
    return [read(Number(line.getAttribute('x1'))), read(Number(line.getAttribute('x2')))];
  };

  it('draws range, quartiles and median where they are, read off the axis', () => {
    expect(ends('.range')).toEqual([expect.closeTo(0.5, 6), expect.closeTo(2, 6)]);
    expect(ends('.quartiles')).toEqual([expect.closeTo(0.8, 6), expect.closeTo(1.25, 6)]);
    expect(ends('.median')).toEqual([expect.closeTo(1, 6), expect.closeTo(1, 6)]);
  });
  it('draws each replica at its value, the chosen one last', () => {
    const places = [...row.querySelectorAll('.replica')].map((mark) =>
      read(Number(mark.querySelector('circle')!.getAttribute('cx'))),
    );
    expect(places).toEqual([expect.closeTo(1, 6), expect.closeTo(0.25, 6)]);
    expect(row.querySelector('.replica.chosen')).not.toBeNull();
  });
  it('draws a line at the group’s centre, and none where amounts are shown', () => {
    expect(read(Number(svg.querySelector('.centre')!.getAttribute('x1')))).toBeCloseTo(1, 6);
    expect(drawn(oxideProfile, { ...data, basis: 'amount' }).svg.querySelector('.centre')).toBeNull();
  });
  it('says beside each oxide how far off the chosen replica is', () => {
    expect(row.textContent).toContain('4.0× lower');
    expect(row.textContent).toContain('PbO');
    expect(svg.querySelector('.row[data-oxide="SiO2"]')!.textContent).toContain('SiO₂');
  });
  it('draws each sherd where they are too few for quartiles', () => {
    const few = { ...spread, quartiles: null, each: [0.5, 1, 2] };
    const { svg: one } = drawn(oxideProfile, { ...data, rows: [{ ...data.rows[0]!, spread: few }] });
    expect(piecesOf(one.querySelector('.each')!.getAttribute('d')!).length).toBe(3);
    expect(one.querySelector('.quartiles')).toBeNull();
  });
  it('keeps nought, which has no logarithm, off the plot without breaking it', () => {
    const none = { ...data.rows[0]!, values: [0, 1], spread: { ...spread, low: 1e-9 } };
    const { text: file, svg: one } = drawn(oxideProfile, { ...data, basis: 'amount', rows: [none] });
    expect(file).not.toMatch(/NaN|Infinity/);
    expect(one.querySelectorAll('.replica').length).toBe(1 + 2);
  });
  it('is well-formed, with unique ids, the same each time, in every theme and at its own height', () => {
    for (const theme of Object.values(THEMES)) {
      const sheet = { width: 360, height: profileHeight(data, 360, theme), theme };
      const file = drawn(oxideProfile, data, sheet).text;
      expect(new Set(idsIn(file)).size).toBe(idsIn(file).length);
      expect(file).not.toMatch(/NaN|undefined/);
      expect(drawn(oxideProfile, data, sheet).text).toBe(file);
    }
    expect(idsIn(text).every((id) => id.startsWith('profile-'))).toBe(true);
  });
  it('draws an empty frame when there are no oxides', () => {
    expect(drawn(oxideProfile, { ...data, rows: [] }).svg.querySelector('.axis')).not.toBeNull();
  });
});

describe('how far off', () => {
  it.each([
    [0.5, '2.0× lower'],
    [1.8, '1.8× higher'],
    [12.3, '12× higher'],
    [1.004, 'the same'],
    [0.97, '1.03× lower'],
  ])('a factor of %s reads %s', (factor, words) => {
    expect(howFarOff(factor)).toBe(words);
  });
});

describe('ticks of a logarithmic axis', () => {
  it('lie within the axis, ascend, and are no more than asked for unless none would be left', () => {
    const decades = fc.double({ min: -4, max: 3, noNaN: true });
    fc.assert(
      fc.property(
        decades,
        fc.double({ min: 0.05, max: 6, noNaN: true }),
        fc.integer({ min: 2, max: 20 }),
        (from, wide, most) => {
          const [low, high] = [10 ** from, 10 ** (from + wide)];
          const ticks = logTicks([low, high], most);
          expect(
            ticks.every((tick, i) => tick >= low && tick <= high && (i === 0 || tick > ticks[i - 1]!)),
          ).toBe(true);
          expect(ticks.length).toBeLessThanOrEqual(most);
        },
      ),
    );
  });
});
