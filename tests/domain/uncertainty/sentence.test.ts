import { describe, expect, it } from 'vitest';
import { uncertaintySentence } from '../../../api/domain/uncertainty/sentence.ts';
import { intervalOf, throughFalling } from '../../../api/domain/uncertainty/summary.ts';

const at = { low: 1, median: 2, high: 3 };
const group = (
  inside: number | null,
  name = 'Red Terrace',
  outside = inside === null ? null : 1 - inside,
) => ({
  group: name,
  name,
  distance: at,
  d2: at,
  membership: inside === null ? null : { low: 0.0004, median: 0.1, high: 0.4 },
  inside,
  outside,
  nearest: 0.8,
});
const say = (...groups: ReturnType<typeof group>[]) =>
  uncertaintySentence({ label: 'Tile 14', draws: 2000, groups });

describe('the sentence of a drawn placement', () => {
  it('claims neither inside nor outside between 5 % and 95 % of draws', () => {
    for (const share of [0.06, 0.5, 0.71, 0.94])
      expect(say(group(share))).toMatch(
        /^Whether Tile 14 lies inside Red Terrace cannot be told within the uncertainties/,
      );
    expect(say(group(0.71))).toContain(
      'it is inside in 71 %, at the edge in 0 % and outside in 29 % of 2,000 draws (membership probability < 0.001 to 0.40',
    );
  });

  it('at 95 % says it cannot be told from the group, at 5 % that it lies outside', () => {
    expect(say(group(0.96))).toMatch(
      /^Tile 14 cannot be told from Red Terrace, with the uncertainties carried/,
    );
    expect(say(group(0.04))).toMatch(/^Tile 14 lies outside Red Terrace within the uncertainties/);
  });

  it('does not call outside what lies at the edge in most draws, as the placement does not', () => {
    expect(say(group(0.01, 'Red Terrace', 0.02))).toBe(
      'Tile 14 lies at the edge of Red Terrace within the uncertainties: it is at the edge in 97 % of 2,000 draws (membership probability < 0.001 to 0.40 in 95 % of them).',
    );
    expect(say(group(0.04, 'Red Terrace', 0.4))).toMatch(
      /^Whether Tile 14 lies inside .* inside in 4 %, at the edge in 56 % and outside in 40 % of 2,000 draws/,
    );
  });

  it('never rounds a share to none or all', () => {
    expect(say(group(0.9995))).toContain('over 99 % of');
    expect(say(group(0.0005))).toContain('over 99 % of');
    expect(say(group(0.0005, 'Red Terrace', 0.5))).toContain('inside in under 1 %, at');
    expect(say(group(1))).toContain('100 % of');
  });

  it('speaks of the group it is most often inside, and of none where there is none', () => {
    expect(say(group(0.2, 'A'), group(0.6, 'B'))).toContain('inside B');
    expect(say(group(0.01, 'A', 0.99), group(0, 'B', 0.3))).toContain('inside B');
    expect(say(group(0.6, 'A', 0.4), group(0, 'B', 0))).toContain('inside A');
    const ranked = { ...group(0, 'Few', 0.01), membership: null };
    expect(say(ranked, group(0.05, 'B', 0.5))).toContain('inside B');
    expect(say(ranked, { ...group(0, 'B', 1), nearest: 0.1 })).toContain('edge of Few');
    expect(say(group(null))).toMatch(/cannot be judged.*nearest in 80 % of 2,000 draws/);
    expect(say()).toContain('no ware group');
  });
});

describe('intervals of draws', () => {
  it('hold the middle 95 %, and turn over through a falling function', () => {
    const draws = Float64Array.from({ length: 1001 }, (_, i) => (i * 8) % 1001);
    const interval = intervalOf(draws);
    expect(interval).toEqual({ low: 25, median: 500, high: 975 });
    expect(throughFalling(interval, (x) => -x)).toEqual({ low: -975, median: -500, high: -25 });
  });
});
