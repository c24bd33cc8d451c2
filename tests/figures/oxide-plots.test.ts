import { describe, expect, it } from 'vitest';
import { pairCaption, ternaryCaption } from '../../api/figures/captions-more.ts';
import { pairData, tellingOxides, ternaryData } from '../../api/figures/oxides-from-model.ts';
import { pairHeight, pairPlot } from '../../api/figures/pair-plot.ts';
import { ternaryHeight, ternaryPlot } from '../../api/figures/ternary-plot.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { GROUPS, OXIDES, RAW } from '../support/romano-british.ts';
import { drawn, idsIn, middleOf, numbersIn, piecesOf, rulerOf } from './drawing.ts';
import { romanoBritish } from './romano-british-model.ts';

const { model, placements } = romanoBritish();
const slots = { [GROUPS[0]]: 0, [GROUPS[1]]: 1, [GROUPS[2]]: 2 };
const look = { slots, chosen: 'tile0' };
const theme = THEMES['page-light'];
const raw = (row: number, oxide: string) => RAW[row]![OXIDES.indexOf(oxide)]!;

describe('a ternary diagram', () => {
  const oxides = ['Al2O3', 'Fe2O3', 'MgO'] as const;
  const data = ternaryData(model, placements, { id: 'ternary', oxides, ...look })!;
  const { svg } = drawn(ternaryPlot, data, { width: 600, height: ternaryHeight(data, 600, theme) });
  const edges = [...svg.querySelectorAll('line')]
    .slice(12)
    .map((line) => ['x1', 'y1', 'x2', 'y2'].map((name) => Number(line.getAttribute(name))));
  const [top, left, right] = edges.map(([x, y]) => [x!, y!] as const);

  it('has three sides alike', () => {
    const lengths = edges.map(([x1, y1, x2, y2]) => Math.hypot(x1! - x2!, y1! - y2!));
    expect(lengths[1]).toBeCloseTo(lengths[0]!, 6);
    expect(lengths[2]).toBeCloseTo(lengths[0]!, 6);
  });
  it('sets each sherd by its three shares, whatever it was closed to', () => {
    const marks = piecesOf(svg.querySelector('.references[data-slot="0"]')!.getAttribute('d')!);
    expect(marks).toHaveLength(21);
    marks.forEach((mark, row) => {
      const three = oxides.map((oxide) => raw(row, oxide));
      const total = three.reduce((sum, value) => sum + value, 0);
      const [x, y] = [0, 1].map((k) =>
        [top, left, right].reduce((sum, corner, i) => sum + (corner![k]! * three[i]!) / total, 0),
      );
      const [markX, markY] = middleOf(mark);
      expect(markX).toBeCloseTo(x!, 0);
      expect(markY).toBeCloseTo(y!, 0);
    });
  });
  it('is none where an oxide was not compared, and says n in its caption', () => {
    const unknown = { id: 'x', oxides: ['Al2O3', 'Fe2O3', 'SnO2'] as const, ...look };
    expect(ternaryData(model, placements, unknown)).toBeNull();
    expect(ternaryCaption(data)).toContain('n = 21');
  });
});

describe.each(['linear', 'log'] as const)('a plot of two oxides on %s axes', (axis) => {
  const choices = {
    id: 'pair',
    oxides: ['Fe2O3', 'MgO'] as const,
    axis,
    level: 0.95,
    ellipses: true,
    ...look,
  };
  const data = pairData(model, placements, choices)!;
  const { svg } = drawn(pairPlot, data, { width: 760, height: pairHeight(data, 760, theme) });
  it('sets each sherd at its closed wt%', () => {
    const marks = piecesOf(svg.querySelector('.references[data-slot="0"]')!.getAttribute('d')!).map(middleOf);
    const total = (row: number) => RAW[row]!.reduce((sum, value) => sum + value, 0);
    const into = axis === 'log' ? Math.log : (value: number) => value;
    const wanted = [0, 20].map((row) => into((100 * raw(row, 'Fe2O3')) / total(row)));
    if (axis === 'linear') {
      const read = rulerOf(svg, 'x');
      expect(read(marks[0]![0])).toBeCloseTo(wanted[0]!, 1);
      expect(read(marks[20]![0])).toBeCloseTo(wanted[1]!, 1);
    } else {
      const ticks = [...svg.querySelectorAll('.axis.x .tick')].map((tick) => ({
        px: numbersIn(tick.getAttribute('transform')!)[0]! - 0.5,
        value: Math.log(Number(tick.textContent)),
      }));
      const [first, last] = [ticks[0]!, ticks.at(-1)!];
      const unit = (last.value - first.value) / (last.px - first.px);
      expect(first.value + (marks[0]![0] - first.px) * unit).toBeCloseTo(wanted[0]!, 1);
    }
  });
  it('draws ellipses that hold about as many members as they say', () => {
    data.ellipses.forEach(({ slot, curve }) => {
      const members = model.members.filter(({ group }) => slots[group as keyof typeof slots] === slot);
      const inside = members.filter(({ id }) => holds(curve, data.amounts.get(id)!)).length;
      expect(inside / members.length).toBeGreaterThanOrEqual(0.85);
      expect(curve.flat().every((value) => axis === 'linear' || value > 0)).toBe(true);
    });
    expect(data.ellipses).toHaveLength(3);
    expect(pairCaption(data)).toContain(axis === 'log' ? 'computed on the logarithms' : 'linear axes');
  });
  it('gives a group of three none', () => {
    const few = model.members.filter(({ group }, i) => group !== GROUPS[0] || i < 3);
    const groups = model.groups.map((group, i) => (i === 0 ? { ...group, n: 3 } : group));
    expect(pairData({ ...model, members: few, groups }, [], choices)!.ellipses).toHaveLength(2);
  });
});

describe('plots of oxides', () => {
  it('are well-formed, with unique ids, in every theme', () => {
    const oxides = tellingOxides(model, 3) as [string, string, string];
    const ternary = ternaryData(model, placements, { id: 't', oxides, ...look })!;
    const two = [oxides[0], oxides[1]] as const;
    const pair = pairData(model, placements, {
      id: 'p',
      oxides: two,
      axis: 'log',
      level: 0.9,
      ellipses: true,
      ...look,
    })!;
    for (const one of Object.values(THEMES))
      for (const { text } of [
        drawn(ternaryPlot, ternary, { theme: one }),
        drawn(pairPlot, pair, { theme: one }),
      ]) {
        const ids = idsIn(text);
        expect(new Set(ids).size).toBe(ids.length);
      }
  });
  it('take the oxides whose log-ratios vary the most where none are named', () => {
    const variance = (part: number) => {
      const values = model.members.map(({ parts }) => {
        const logs = parts.map(Math.log);
        return logs[part]! - logs.reduce((sum, log) => sum + log, 0) / logs.length;
      });
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    };
    const order = model.parts.map((oxide, part) => ({ oxide, v: variance(part) })).sort((a, b) => b.v - a.v);
    expect(tellingOxides(model, 4)).toEqual(order.slice(0, 4).map(({ oxide }) => oxide));
  });
});

/** Whether a point lies inside a closed curve, by counting crossings. */
function holds(curve: readonly (readonly [number, number])[], [x, y]: readonly [number, number]): boolean {
  let inside = false;
  curve.forEach(([x1, y1], i) => {
    const [x2, y2] = curve[(i + 1) % curve.length]!;
    if (y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1)) inside = !inside;
  });
  return inside;
}
