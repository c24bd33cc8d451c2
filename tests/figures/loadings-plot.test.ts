import { describe, expect, it } from 'vitest';
import { loadingsCaption, scoresCaption } from '../../api/figures/captions.ts';
import { loadingsData } from '../../api/figures/loadings-data.ts';
import { loadingsHeight, loadingsPlot } from '../../api/figures/loadings-plot.ts';
import { scoresData } from '../../api/figures/scores-from-model.ts';
import { unnamedLoadings } from '../../api/figures/scores-loadings.ts';
import { scoresPlot } from '../../api/figures/scores-plot.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { GROUPS, OXIDES, R_SAYS } from '../support/romano-british.ts';
import { drawn, idsIn } from './drawing.ts';
import { romanoBritish } from './romano-british-model.ts';

const { model, placements } = romanoBritish();
const data = loadingsData(model, { id: 'loadings', components: [0, 1] });

describe('a plot of loadings', () => {
  it('draws a bar for each of R’s loadings, as long as it is large', () => {
    const { svg } = drawn(loadingsPlot, data);
    const { loadings } = R_SAYS.prcomp_clr_cov.value;
    [...svg.querySelectorAll('.panel')].forEach((panel, k) => {
      const bars = [...panel.querySelectorAll('.bar')];
      expect(bars).toHaveLength(OXIDES.length);
      const first =
        Number(bars[0]!.getAttribute('width')) / Math.abs(Number(bars[0]!.getAttribute('data-value')));
      bars.forEach((bar, row) => {
        const value = Number(bar.getAttribute('data-value'));
        expect(value).toBeCloseTo(loadings[OXIDES.indexOf(data.parts[row]!)][k], 9);
        expect(Number(bar.getAttribute('width')) / Math.abs(value)).toBeCloseTo(first, 6);
      });
    });
  });
  it('puts the oxide that pulls the most first', () => {
    const pull = data.parts.map((_, i) => Math.max(...data.panels.map(({ values }) => Math.abs(values[i]!))));
    expect([...pull].sort((one, other) => other - one)).toEqual(pull);
  });
  it('is well-formed, with unique ids, in every theme', () => {
    for (const theme of Object.values(THEMES)) {
      const ids = idsIn(drawn(loadingsPlot, data, { theme, height: loadingsHeight(data, 760, theme) }).text);
      expect(new Set(ids).size).toBe(ids.length);
    }
  });
  it('has one panel where a component is asked for twice or is not there', () => {
    expect(loadingsData(model, { id: 'l', components: [0, 0] }).panels).toHaveLength(1);
    expect(loadingsData(model, { id: 'l', components: [1, 99] }).panels).toHaveLength(1);
  });
  it('tells n, the oxides and the shares of variance in its caption', () => {
    const caption = loadingsCaption(data, model);
    expect(caption).toContain('from 45 sherds');
    expect(caption).toContain('9 oxides');
    expect(caption).toContain('Fe₂O₃');
  });
});

describe('arrows of loadings in a scores plot', () => {
  const scores = scoresData(model, placements, {
    ...{ id: 'scores', components: [0, 1], level: 0.95, ellipses: true, loadings: true },
    ...{ naming: 'nothing', chosen: null, slots: { [GROUPS[0]]: 0 } },
  });
  it('are named from a quarter of the longest on, and the caption lists the rest', () => {
    const length = ({ x, y }: { x: number; y: number }) => Math.hypot(x, y);
    const longest = Math.max(...scores.loadings!.map(length));
    const short = scores.loadings!.filter((arrow) => length(arrow) < longest / 4).map(({ part }) => part);
    expect(short.length).toBeGreaterThan(0);
    expect(unnamedLoadings(scores)).toEqual(short);
    const { svg } = drawn(scoresPlot, scores);
    expect(svg.querySelectorAll('.loading')).toHaveLength(OXIDES.length);
    expect(svg.querySelectorAll('.names text').length).toBe(OXIDES.length - short.length);
    const plain = scoresCaption(scores, model).replace(/[₀-₉]/g, (digit) =>
      String(digit.charCodeAt(0) - 0x2080),
    );
    const told = plain.split('Too short to be named: ')[1]!;
    for (const part of short) expect(told).toContain(part);
  });
});
