import { describe, expect, it } from 'vitest';
import type { Effect, TrialAnalysis } from '../../api/domain/trials/types.ts';
import { FORMATS, grown } from '../../api/export/formats.ts';
import { effectsCaption } from '../../api/figures/captions-trial.ts';
import { effectsData } from '../../api/figures/effects-data.ts';
import { effectsHeight, rowsThatFit } from '../../api/figures/effects-layout.ts';
import { effectsPlot } from '../../api/figures/effects-plot.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { collisions, cutTexts } from './collisions.ts';
import { drawn, idsIn, numbersIn } from './drawing.ts';

const effect = (given: Partial<Effect>): Effect => ({
  ...{ factor: 'coats', contrast: 'per coat', unitOfChange: 'zone', method: 'exact-conditional' },
  ...{ scale: 'log-odds', estimate: Math.log(4), low: Math.log(2), high: Math.log(8), level: 0.95 },
  ...{ p: 0.01, arrangements: 100, smallestP: 0.001, separated: false, zones: 24, tiles: 4 },
  ...{ adjustedFor: [], verdict: 'matters', sentence: 'Coats matter.', cautions: [] },
  ...given,
});
const between = {
  unitOfChange: 'tile',
  method: 'exact-permutation',
  scale: 'share',
  verdict: 'no sign',
} as const;
const effects = [
  effect({
    ...between,
    factor: 'lead roast',
    contrast: 'fritted instead of once',
    estimate: 0.4,
    low: -0.1,
    high: 0.8,
  }),
  effect({}),
  effect({
    factor: 'lead as weighed on the day',
    contrast: 'per 10 wt%',
    estimate: null,
    low: Math.log(3),
    high: null,
  }),
  effect({ ...between, factor: 'fuel', estimate: 0.1, low: null, high: null, verdict: 'cannot tell' }),
];
const analysis: TrialAnalysis = {
  ...{ outcome: 'glossy', zones: 24, tiles: 4, firings: 2, counts: { matt: 10, satin: 6, glossy: 8 } },
  ...{ leftOut: [], effects, tangles: [], models: [], sentence: '', cautions: [] },
};
const data = effectsData(analysis, { id: 'e' });

describe('the effects of factors', () => {
  it('are drawn where the axis says: an odds ratio of 4 between its bounds of 2 and 8', () => {
    const { svg } = drawn(effectsPlot, data);
    const ticks = [...svg.querySelector('.axis.x')!.querySelectorAll('.tick')].map((tick) => ({
      px: numbersIn(tick.getAttribute('transform')!)[0]! - 0.5,
      odds: Number(tick.textContent),
    }));
    expect(ticks.map(({ odds }) => odds)).toContain(1);
    const [first, last] = [ticks[0]!, ticks.at(-1)!];
    const oddsAt = (px: number) =>
      first.odds * (last.odds / first.odds) ** ((px - first.px) / (last.px - first.px));
    const of = (name: string, attribute: string) =>
      Number(svg.querySelector(`.matters ${name}`)!.getAttribute(attribute));
    expect(oddsAt(of('.estimate', 'cx'))).toBeCloseTo(4, 1);
    expect(oddsAt(of('.interval', 'x1'))).toBeCloseTo(2, 1);
    expect(oddsAt(of('.interval', 'x2'))).toBeCloseTo(8, 1);
  });

  it('end in an arrow where they have no bound, and say so in words', () => {
    const { svg } = drawn(effectsPlot, data);
    expect(svg.querySelectorAll('.open')).toHaveLength(3);
    const words = svg.textContent!.replaceAll('\u00a0', ' ');
    expect(words).toContain('×3 or more');
    expect(words).toContain('+10 points (no bounds)');
    expect(svg.querySelectorAll('.estimate')).toHaveLength(3);
    expect(effectsCaption(data)).toContain('no bound on that side');
  });

  it('end in an arrow too where a bound lies beyond what two shares can be apart', () => {
    const far = [effect({ ...between, estimate: 0.5, low: -0.2, high: 1.12 })];
    const one = effectsData({ ...analysis, effects: far }, { id: 'e' });
    const { svg } = drawn(effectsPlot, one);
    expect(svg.querySelectorAll('.open')).toHaveLength(1);
    expect(svg.textContent!.replaceAll('\u00a0', ' ')).toContain('+50 points (−20 or more)');
    expect(svg.textContent).not.toContain('112');
    expect(effectsCaption(one)).toContain('no bound on that side');
  });

  it('carry their verdict as a word and as a full or hollow mark, what matters first', () => {
    const { svg } = drawn(effectsPlot, data);
    for (const word of ['matters', 'no sign', 'cannot tell']) expect(svg.textContent).toContain(word);
    const { background, accent } = THEMES['page-light'];
    const fills = [...svg.querySelectorAll('.estimate')].map((mark) => mark.getAttribute('fill'));
    expect(fills).toEqual([accent, background, background]);
  });

  it('say n, method and what is compared in their caption', () => {
    const caption = effectsCaption(data);
    expect(caption).toContain('from 24 zones of 4 tiles and 2 firings (10 matt, 6 satin, 8 glossy)');
    expect(caption).toContain('exact conditional test');
    expect(caption).toContain('whole tiles within their firing');
  });

  it.each(Object.values(FORMATS))('collide and run off nowhere: $name', (sheet) => {
    const theme = THEMES[sheet.theme];
    const size = grown(sheet, effectsHeight(data, sheet.width, theme));
    const { svg, text } = drawn(effectsPlot, data, { ...size, theme });
    expect(collisions(svg)).toEqual([]);
    expect(cutTexts(svg)).toEqual([]);
    const ids = idsIn(text);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('too many for a slide are left off, and the caption counts them', () => {
    const many = { ...analysis, effects: Array.from({ length: 20 }, (_, i) => effect({ factor: `f${i}` })) };
    const { width, height, theme } = FORMATS['slide-16-9'];
    const most = rowsThatFit(effectsData(many, { id: 'e' }), { width, height, theme: THEMES[theme] });
    expect(most).toBeGreaterThan(3);
    expect(most).toBeLessThan(20);
    const shown = effectsData(many, { id: 'e', most });
    expect(effectsCaption(shown)).toContain(`${20 - most} more effects not shown`);
    expect(collisions(drawn(effectsPlot, shown, { width, height, theme: THEMES[theme] }).svg)).toEqual([]);
  });

  it('are refused where there is none', () => {
    expect(() => effectsData({ ...analysis, effects: [] }, { id: 'e' })).toThrow(/at least one effect/);
  });
});
