import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectInFigures, showEffect, tellingBounds } from '../../../api/domain/trials/effect-size.ts';
import { effectSentence } from '../../../api/domain/trials/effect-words.ts';

const share = { scale: 'share', estimate: 0.42 } as const;
const about = {
  ...{ factor: 'coats', contrast: 'per coat', unitOfChange: 'tile', method: 'exact-permutation' },
  ...{ level: 0.95, p: 0.04, arrangements: 20, verdict: 'matters' },
} as unknown as Parameters<typeof effectSentence>[0];

describe('the size of an effect', () => {
  it('keeps no bound at or beyond what two shares or two grades can be apart, and every other', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (low, high) => {
          for (const [scale, far] of [
            ['share', 1],
            ['grades', 2],
          ] as const) {
            const told = tellingBounds({ scale, estimate: 0, low, high });
            expect(told.low).toBe(low > -far ? low : null);
            expect(told.high).toBe(high < far ? high : null);
          }
          expect(tellingBounds({ scale: 'log-odds', estimate: 0, low, high })).toEqual({ low, high });
        },
      ),
    );
  });
  it('reads alike in figure and sentence: a bound of 112 points is no bound in either', () => {
    const effect = { ...about, ...share, low: -0.074, high: 1.12 };
    expect(effectInFigures(effect)).toBe('+42 points (−7.4 or more)');
    const sentence = effectSentence(effect, 'share');
    expect(sentence).toContain('by 42 percentage points');
    expect(sentence).toContain('(95 % interval from −7.4, no upper bound from these tiles)');
    expect(`${effectInFigures(effect)}${sentence}`).not.toMatch(/11[02]/);
  });
  it('with both bounds beyond has none in either', () => {
    const effect = { ...about, ...share, low: -1.4, high: 1 };
    expect(effectInFigures(effect)).toBe('+42 points (no bounds)');
    expect(effectSentence(effect, 'share')).toContain('(95 % interval with no bound from these tiles)');
  });
  it('is rounded once: every number of the figure stands in the sentence', () => {
    const bound = fc.double({ min: -0.99, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(bound, bound, (low, high) => {
        const effect = { ...about, ...share, low, high };
        const sentence = effectSentence(effect, 'share');
        for (const value of [low, high]) {
          expect(effectInFigures(effect)).toContain(showEffect(value, 'share'));
          expect(sentence).toContain(showEffect(value, 'share'));
        }
      }),
    );
  });
  it('of no effect is zero without a sign', () => {
    expect(showEffect(0, 'share')).toBe('0');
    expect(showEffect(0, 'log-odds')).toBe('1');
  });
});
