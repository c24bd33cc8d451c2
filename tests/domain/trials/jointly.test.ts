import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { analyseTrial } from '../../../api/domain/trials/analyse.ts';
import { trialEffects } from '../../../api/domain/trials/effects.ts';
import { tiedWith } from '../../../api/domain/trials/jointly.ts';
import { findTangles } from '../../../api/domain/trials/tangles.ts';
import { trialTable } from '../../../api/domain/trials/trial-table.ts';
import type { Factor, Level, TrialRequest, Zone } from '../../../api/domain/trials/types.ts';
import { LEAD, ROAST, trialZone } from '../../support/trial-zones.ts';

const SIEVE: Factor = { name: 'sieve', kind: 'number', unit: 'mesh', step: 1 };
const SHARE: TrialRequest = { factors: [LEAD, ROAST], outcome: 'share', seed: 1 };

/** One zone a tile: settings and the share of it that came out glassy. */
const tiles = (rows: readonly (readonly [Record<string, Level>, number])[]): Zone[] =>
  rows.map(([factors, share], i) => trialZone(`T${i + 1}`, factors, { share }));
const together = (shares: readonly number[]) =>
  tiles(
    shares.map((share, i) => [i % 2 ? { lead: 40, roast: 'long' } : { lead: 30, roast: 'short' }, share]),
  );
const jointOf = (zones: readonly Zone[], request: TrialRequest) => {
  const table = trialTable(zones, request);
  return trialEffects(table, findTangles(table), { level: 0.95, seed: 1 }).joint;
};

describe('factors that changed together exactly', () => {
  const clear = together([0, 0.9, 0.1, 0.8, 0.2, 1, 0.1, 0.9]);

  it('are said to have made a difference together, and not which of them', () => {
    const { sentence, effects } = analyseTrial(clear, SHARE);
    expect(sentence).toMatch(
      /^From 8 zones of 8 tiles, lead or roast made a difference, or both did \(p = \.029\), but these 8 tiles cannot tell which\. lead and roast changed together/,
    );
    expect(sentence).not.toContain('no factor');
    expect(sentence).not.toContain('cannot tell about');
    expect(effects.map((e) => e.verdict)).toEqual(['cannot tell', 'cannot tell']);
    for (const { cautions } of effects) expect(cautions.join(' ')).toContain('cannot tell which');
  });

  it('have the p of either alone: 2 of the 70 ways to deal four settings among eight tiles', () => {
    const alone = analyseTrial(clear, { ...SHARE, factors: [LEAD] }).effects[0]!;
    expect(alone).toMatchObject({ verdict: 'matters', arrangements: 70 });
    expect(alone.p).toBeCloseTo(2 / 70, 12);
  });

  it('are not said to have made one where what they share shows too little, or could show nothing', () => {
    for (const shares of [
      [0, 0.9, 0.8, 0.1, 0.2, 1, 0.9, 0.1],
      [0, 1, 0, 1],
      [0, 0, 0, 0, 0, 0, 0, 0],
    ])
      expect(jointOf(together(shares), SHARE)).toEqual([]);
    expect(analyseTrial(together([0, 1, 0, 1]), SHARE).sentence).toContain('no factor can be said');
  });

  it('stand beside a factor that mattered by itself', () => {
    const zones = clear.flatMap((z) =>
      [1, 2, 3].map((coats) => ({
        ...z,
        id: `${z.id}${coats}`,
        factors: { ...z.factors, coats },
        glassyShare: 0.8 * z.glassyShare! + coats / 20,
      })),
    );
    const factors = [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 } as Factor, LEAD, ROAST];
    expect(analyseTrial(zones, { ...SHARE, factors }).sentence).toMatch(
      /coats made a difference\. Besides, lead or roast made a difference, or both did/,
    );
  });

  it('are not blamed for what a third factor did that is held beside them', () => {
    const zones = tiles(
      Array.from({ length: 12 }, (_, i) => {
        const own = i % 2 ? { lead: 40, roast: 'long' } : { lead: 30, roast: 'short' };
        const sieve = (i % 2) * 3 + Math.floor(i / 2);
        return [{ ...own, sieve }, sieve / 10 + ((i * 7) % 5) / 200];
      }),
    );
    const factors = [LEAD, ROAST];
    expect(jointOf(zones, { ...SHARE, factors })).toHaveLength(1);
    expect(jointOf(zones, { ...SHARE, factors: [...factors, SIEVE] })).toEqual([]);
  });

  it('are named with all that each follows from', () => {
    const [a, b] = [0, 1, 2]
      .flatMap((x) => [0, 1, 2].map((y) => [x, y] as const))
      .reduce(
        ([xs, ys], [x, y]) => [
          [...xs, x],
          [...ys, y],
        ],
        [[] as number[], [] as number[]],
      );
    const name = (n: string): Factor => ({ name: n, kind: 'number', unit: 'g', step: 1 });
    const zones = tiles(a.map((x, i) => [{ a: x, b: b[i]!, c: x + b[i]! }, (x + b[i]!) / 5]));
    const [joint] = jointOf(zones, { ...SHARE, factors: ['a', 'b', 'c'].map(name) });
    expect(joint!.sentence).toMatch(/^a, b or c made a difference, or more than one of them did/);
  });

  it('without effect are called at most as often as one factor is: 5 in 100', () => {
    const runs = 300;
    const called = Array.from({ length: runs }, (_, run) => {
      const { normal } = randomStream(run + 1);
      return jointOf(together(Array.from({ length: 8 }, () => 0.5 + normal() / 10)), SHARE).length;
    }).reduce((x, y) => x + y, 0);
    // 2 of 70 arrangements at most: 2.9 % expected; five standard errors above stay under 8 %.
    expect(called / runs).toBeLessThan(0.08);
    expect(called).toBeGreaterThan(0);
  });

  it('give the same answer whichever is ticked first', () => {
    // Of eight tiles dealt four to four, only settings that part the shares wholly come under .05.
    const four = (min: number) =>
      fc.tuple(...[0, 1, 2, 3].map(() => fc.double({ min, max: min + 0.4, noNaN: true })));
    fc.assert(
      fc.property(four(0), four(0.6), fc.boolean(), (low, high, longIsHigh) => {
        const pairs = low.map((l, i) => (longIsHigh ? [l, high[i]!] : [high[i]!, l]));
        const p = (factors: readonly Factor[]) =>
          jointOf(together(pairs.flat()), { ...SHARE, factors }).map((j) => /\(p.*?\)/.exec(j.sentence)![0]);
        expect(p([LEAD, ROAST])).toHaveLength(1);
        expect(p([ROAST, LEAD])).toEqual(p([LEAD, ROAST]));
      }),
      { numRuns: 30 },
    );
  });
});

describe('tiedWith', () => {
  it('goes on through ties that share a factor, and not through factors mostly together', () => {
    const same = (...factors: string[]) => ({ kind: 'same' as const, factors });
    const ties = [
      same('a', 'b'),
      same('c', 'd'),
      same('b', 'c'),
      { kind: 'partly' as const, factors: ['d', 'e'] },
    ];
    expect(tiedWith('d', ties).sort()).toEqual(['a', 'b', 'c', 'd']);
    expect(tiedWith('e', ties)).toEqual([]);
  });
});
