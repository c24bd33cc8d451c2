import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { analyseTrial } from '../../../api/domain/trials/analyse.ts';
import { predictChance } from '../../../api/domain/trials/chance.ts';
import { fitChance } from '../../../api/domain/trials/chance-model.ts';
import { leftOutInWords } from '../../../api/domain/trials/left-out-words.ts';
import { trialTable } from '../../../api/domain/trials/trial-table.ts';
import type { Effect, Factor, Grade, TrialRequest, Zone } from '../../../api/domain/trials/types.ts';
import { expectClose } from '../../support/close.ts';
import { MISC } from '../../support/romano-british.ts';
import { TRIAL_ANSWERS } from '../../support/trial-answers.ts';
import { COATS, LEAD, ROAST, trialZone } from '../../support/trial-zones.ts';

const request = (factors: readonly Factor[], more: Partial<TrialRequest> = {}): TrialRequest => ({
  factors,
  outcome: 'glossy',
  seed: 1,
  ...more,
});
const effectOf = (zones: readonly Zone[], r: TrialRequest, factor: string): Effect =>
  analyseTrial(zones, r).effects.find((e) => e.factor === factor)!;
const grade = (yes: boolean): Grade => (yes ? 'glossy' : 'matt');

/** Four tiles of six zones, glossy from a number of coats on that differs between tiles, with one zone turned over. */
const ladder = (from: readonly number[], turned: readonly [number, number] = [0, 4]): Zone[] =>
  from.flatMap((f, t) =>
    [1, 2, 3, 4, 5, 6].map((coats) =>
      trialZone(
        `T${t + 1}`,
        { coats, roast: t % 2 ? 'long' : 'short' },
        {
          grade: grade(coats >= f !== (turned[0] === t && turned[1] === coats)),
          label: `A${coats}`,
        },
      ),
    ),
  );

describe('a factor that varies within tiles', () => {
  it('gives on infert, sets as tiles, the conditional estimate of R’s clogit (Trichopoulos et al. 1976)', () => {
    const { value } = TRIAL_ANSWERS.infert;
    const zones = value.case.map((yes: number, i: number) =>
      trialZone(
        `set ${value.stratum[i]}`,
        { spontaneous: value.spontaneous[i] },
        { grade: grade(yes === 1), label: `${i}` },
      ),
    );
    const factor: Factor = { name: 'spontaneous', kind: 'number', unit: 'abortions', step: 1 };
    const found = effectOf(zones, request([factor]), 'spontaneous');
    expectClose(found.estimate!, TRIAL_ANSWERS.infert_clogit_spontaneous.value.coef, { relative: 1e-8 });
    expect(found).toMatchObject({ method: 'exact-conditional', verdict: 'matters', unitOfChange: 'zone' });
  });

  it('is compared within tiles only: a tile’s own level changes nothing', () => {
    const zones = ladder([3, 4, 3, 5]);
    const matt = [1, 2, 3, 4, 5, 6].map((coats) =>
      trialZone('T9', { coats, roast: 'short' }, { grade: 'matt' }),
    );
    const [before, after] = [zones, [...zones, ...matt]].map((z) => effectOf(z, request([COATS]), 'coats'));
    expectClose([after!.estimate!, after!.low!, after!.p!], [before!.estimate!, before!.low!, before!.p!]);
  });

  it('states its effect per step: per two coats it is twice that per one', () => {
    const zones = ladder([3, 4, 3, 5]);
    const one = effectOf(zones, request([COATS]), 'coats');
    const two = effectOf(zones, request([{ ...COATS, step: 2 } as Factor]), 'coats');
    expectClose([two.estimate!, two.low!, two.high!], [one.estimate! * 2, one.low! * 2, one.high! * 2]);
    expect(two.contrast).toBe('per 2 coats');
  });

  it('that separates the grades has a lower end only, and the sentence says so', () => {
    const found = effectOf(ladder([3, 4, 3, 5], [9, 9]), request([COATS]), 'coats');
    expect(found).toMatchObject({ estimate: null, high: null, separated: true, verdict: 'matters' });
    expect(found.sentence).toMatch(
      /matters: it raises the odds of a glossy zone .* no upper bound from these tiles/,
    );
  });

  it('of share glassy is a permutation within tiles; R’s 216 arrangements of three firings give its p', () => {
    const { blocks, p_two_sided } = MISC.perm_within_blocks.value;
    const zones = blocks.flatMap(({ a, b }: { a: number[]; b: number[] }, t: number) =>
      [...a, ...b].map((y, i) =>
        trialZone(`T${t}`, { roast: i < 2 ? 'long' : 'short' }, { share: y / 10, label: `A${i}` }),
      ),
    );
    const found = effectOf(zones, request([ROAST], { outcome: 'share' }), 'roast');
    expectClose([found.p!, found.arrangements!], [p_two_sided, 216]);
    expect(found).toMatchObject({ method: 'exact-permutation', scale: 'share', verdict: 'matters' });
  });

  it('of share glassy over many zones is sampled, and the sentence says so', () => {
    const zones = ladder([3, 4, 3, 5]).map((z) => ({ ...z, glassyShare: Number(z.factors.coats) / 8 }));
    const found = effectOf(zones, request([COATS], { outcome: 'share' }), 'coats');
    expect(found.method).toBe('sampled-permutation');
    expectClose([found.estimate!, found.p!], [1 / 8, 2 / 10_000]);
    expect(found.sentence).toContain('by 13 percentage points');
    expect(found.sentence).toContain('over 9,999 random arrangements');
  });

  it('never gives a p without size and interval beside it in the sentence', () => {
    for (const outcome of ['glossy', 'grade', 'satin-or-better'] as const)
      for (const e of analyseTrial(ladder([3, 4, 3, 5]), request([COATS, ROAST], { outcome })).effects) {
        expect(e.sentence).toMatch(/95 % interval/);
        expect(e.sentence).toMatch(/p [=<] /);
      }
  });
});

describe('a factor that varies only between tiles', () => {
  it('has tiles as units: 24 zones of four tiles are 6 arrangements, and cannot tell', () => {
    const found = effectOf(ladder([2, 6, 2, 6], [9, 9]), request([ROAST]), 'roast');
    expect(found).toMatchObject({
      unitOfChange: 'tile',
      arrangements: 6,
      verdict: 'cannot tell',
      low: null,
      high: null,
    });
    expectClose([found.p!, found.smallestP!], [1 / 3, 1 / 3]);
  });

  it('is settled by eight tiles, zone by zone duplicates changing nothing', () => {
    const zones = ladder([2, 6, 2, 5, 3, 6, 3, 5], [9, 9]);
    const found = effectOf(zones, request([ROAST]), 'roast');
    expect(found).toMatchObject({ arrangements: 70, verdict: 'matters' });
    expectClose(found.p!, 2 / 70);
    const doubled = [...zones, ...zones.map((z) => ({ ...z, id: `${z.id}b`, label: `${z.label}b` }))];
    const again = effectOf(doubled, request([ROAST]), 'roast');
    expectClose([again.p!, again.estimate!, again.low!], [found.p!, found.estimate!, found.low!]);
  });

  it('is compared within firings, so that a hot firing is not taken for a long roast', () => {
    const zones = ladder([2, 6, 2, 5, 3, 6, 3, 5], [9, 9]).map((z, i) => ({
      ...z,
      firing: i < 24 ? 'F1' : 'F2',
    }));
    const found = effectOf(zones, request([ROAST]), 'roast');
    expect(found).toMatchObject({ unitOfChange: 'tile', arrangements: 36 });
    const apart = ladder([2, 2, 6, 6], [9, 9]).map((z) => {
      const late = z.tile === 'T3' || z.tile === 'T4';
      return { ...z, firing: late ? 'F2' : 'F1', factors: { ...z.factors, roast: late ? 'long' : 'short' } };
    });
    expect(effectOf(apart, request([ROAST]), 'roast')).toMatchObject({
      unitOfChange: 'firing',
      arrangements: 2,
    });
  });

  it('has uneven thickness between tiles taken out first, and says that p is then approximate', () => {
    const zones = ladder([3, 4, 3, 5]).filter((z) => z.tile !== 'T1' || Number(z.factors.coats) > 2);
    const found = effectOf(zones, request([COATS, ROAST]), 'roast');
    expect(found.method).toBe('approximate-permutation');
    expect(found.sentence).toContain('p about ');
    expect(found.cautions).toContain(
      'Tiles differed in coats; its straight-line effect within tiles was taken out, so p is approximate.',
    );
    const even = effectOf(ladder([3, 4, 3, 5]), request([COATS, ROAST]), 'roast');
    expect(even).toMatchObject({ method: 'exact-permutation', cautions: [] });
  });

  it('beside another such factor is approximate, and cannot tell where too few comparisons are left', () => {
    const leads = [30, 34, 41, 38, 45, 32, 47, 36];
    const zones = ladder([2, 6, 2, 5, 3, 6, 3, 5], [9, 9]).map((z) => ({
      ...z,
      factors: { ...z.factors, lead: leads[Number(z.tile.slice(1)) - 1]! },
    }));
    const eight = effectOf(zones, request([ROAST, LEAD]), 'roast');
    expect(eight).toMatchObject({
      method: 'approximate-permutation',
      arrangements: 40_320,
      adjustedFor: ['lead'],
    });
    expect(eight.sentence).toMatch(/p about \.\d+ over 40,300 arrangements/);
    const five = zones.filter((z) => Number(z.tile.slice(1)) <= 5);
    const found = effectOf(five, request([ROAST, LEAD]), 'roast');
    expect(found.verdict).toBe('cannot tell');
    expect(found.cautions.join(' ')).toContain(
      '3 comparisons are left between tiles; a verdict needs at least 6',
    );
    expect(found).not.toHaveProperty('tooFew');
  });

  it('says of three grades beside finely graded factors what the mean grade does, by permutation within tiles', () => {
    const { uniform } = randomStream(7);
    const zones = ladder([3, 4, 3, 5]).map((z, i) => ({
      ...z,
      grade: (['matt', 'satin', 'glossy'] as const)[(i * 7 + (i >> 2)) % 3]!,
      factors: {
        a: Math.round(100 * uniform()),
        b: Math.round(100 * uniform()),
        c: Math.round(100 * uniform()),
      },
    }));
    const fine = ['a', 'b', 'c'].map((name): Factor => ({ name, kind: 'number', unit: '', step: 10 }));
    const found = effectOf(zones, request(fine, { outcome: 'grade' }), 'a');
    expect(found).toMatchObject({
      method: 'approximate-permutation',
      scale: 'grades',
      draws: 9999,
      adjustedFor: ['b', 'c'],
    });
    expect(found.sentence).toMatch(
      /the mean grade by .* grades? .*p about \.\d+ over 9,999 random arrangements/,
    );
  });
});

describe('factors that moved together', () => {
  const zones = ['T1', 'T2', 'T3', 'T4'].flatMap((tile, t) =>
    [1, 2, 3].map((coats) =>
      trialZone(
        tile,
        { coats, roast: t < 2 ? 'short' : 'long', lead: t < 2 ? 30 : 40, air: 'smoky' },
        { grade: grade(coats > 1 + t / 2), label: `A${coats}` },
      ),
    ),
  );
  const found = analyseTrial(
    zones,
    request([COATS, ROAST, LEAD, { name: 'air', kind: 'category', base: null }]),
  );

  it('are named in a sentence with their tiles', () => {
    expect(found.tangles.map((t) => t.sentence)).toEqual([
      'air was smoky in every zone of tiles T1, T2, T3 and T4, so nothing can be said of it.',
      'roast and lead changed together: short with 30 % on T1 and T2; long with 40 % on T3 and T4. So their effects cannot be told apart.',
    ]);
    expect(found.sentence).toContain('cannot be told apart');
  });

  it('are never said to matter', () => {
    const verdicts = found.effects.filter((e) => e.factor !== 'coats').map((e) => e.verdict);
    expect(verdicts).toEqual(['cannot tell', 'cannot tell']);
  });

  it('mostly, are named with how much wider that makes the intervals', () => {
    const nearly = zones
      .map((z) =>
        z.tile === 'T2' ? z : { ...z, factors: { ...z.factors, thinner: Number(z.factors.coats) } },
      )
      .map((z) =>
        z.tile === 'T2'
          ? {
              ...z,
              factors: {
                ...z.factors,
                thinner: 4 - Number(z.factors.coats) === 3 ? 1 : Number(z.factors.coats) + 0.5,
              },
            }
          : z,
      );
    const thinner: Factor = { name: 'thinner', kind: 'number', unit: 'drops', step: 1 };
    const { tangles } = analyseTrial(nearly, request([COATS, thinner]));
    expect(tangles).toHaveLength(1);
    expect(tangles[0]).toMatchObject({ kind: 'partly', factors: ['coats', 'thinner'] });
    expect(tangles[0]!.condition).toBeGreaterThan(4);
    expect(tangles[0]!.sentence).toMatch(/moved mostly together on tiles T1, T2, T3 and T4 .* times as wide/);
  });

  it('three of them, where each follows from the others', () => {
    const three = zones.map((z, i) => ({
      ...z,
      factors: { a: i % 3, b: Math.floor(i / 3), c: (i % 3) + Math.floor(i / 3) },
    }));
    const factors = ['a', 'b', 'c'].map((name): Factor => ({ name, kind: 'number', unit: 'g', step: 1 }));
    const within = three.map((z) => ({ ...z, tile: 'T1', tileLabel: 'T1' }));
    const [tangle] = analyseTrial(within, request(factors)).tangles;
    expect(tangle!.factors).toEqual(['a', 'b', 'c']);
    expect(tangle!.sentence).toContain('each follows from the others on tile T1');
  });
});

describe('the regressions beside', () => {
  it('are proportional odds for three grades, penalised and said so where grades are separated', () => {
    const three = ladder([3, 4, 3, 5], [9, 9]).map((z) => ({
      ...z,
      grade: (z.grade === 'glossy' ? 'glossy' : Number(z.factors.coats) > 1 ? 'satin' : 'matt') as Grade,
    }));
    const [model] = analyseTrial(three, request([COATS], { outcome: 'grade' })).models;
    expect(model).toMatchObject({ kind: 'penalised-proportional-odds', separated: true });
    expect(model!.note).toContain('plain maximum likelihood has no answer');
    expect(model!.terms.every((t) => Number.isFinite(t.estimate))).toBe(true);
  });

  it('give no limits where factors vary only between tiles, since zones of a tile are not independent', () => {
    const [model] = analyseTrial(ladder([3, 4, 3, 5]), request([ROAST])).models;
    expect(model!.terms.every((t) => t.se === null && t.low === null && t.p === null)).toBe(true);
    expect(model!.note).toContain('not independent');
  });
});

describe('what cannot be analysed is said', () => {
  it('zones without an outcome or a setting are named', () => {
    const zones = [
      ...ladder([3, 4, 3, 5]),
      trialZone('T7', { coats: 3, roast: 'short' }, { label: 'B2' }),
      trialZone('T7', { coats: null, roast: 'short' }, { grade: 'matt', label: 'B3' }),
      trialZone('T7', { coats: 'many', roast: 'short' }, { grade: 'matt', label: 'B4' }),
    ];
    expect(analyseTrial(zones, request([COATS, ROAST])).leftOut).toEqual([
      { zone: 'T7 B2', tile: 'T7', why: 'no gloss grade noted yet' },
      { zone: 'T7 B3', tile: 'T7', why: 'coats not noted' },
      { zone: 'T7 B4', tile: 'T7', why: 'coats is “many”, not a number' },
    ]);
  });

  it('many zones without an outcome are counted together with their tiles', () => {
    const open = ladder([9, 9]).map((z) => ({ ...z, grade: null, tileLabel: `C${z.tile.slice(1)}` }));
    const { leftOut, cautions } = analyseTrial(
      [...ladder([3, 4, 3, 5]), ...open.map((z) => ({ ...z, tile: z.tileLabel }))],
      request([COATS]),
    );
    expect(cautions.join(' ')).toContain('12 zones were left out');
    expect(leftOutInWords(leftOut)).toEqual(['12 zones of tiles C1 and C2: no gloss grade noted yet']);
    const old = leftOut.map(({ zone, why }) => ({ zone, why }));
    expect(leftOutInWords(old.slice(0, 4))[0]).toMatch(/^C1 A1, C1 A2, C1 A3 and C1 A4: /);
  });

  it('a firing that nobody noted is no firing', () => {
    const fired = (firing: (tile: string) => string | null) =>
      analyseTrial(
        ladder([3, 4, 3, 5]).map((z) => ({ ...z, firing: firing(z.tile) })),
        request([COATS]),
      );
    expect(fired(() => null).firings).toBe(0);
    const one = fired((tile) => (tile === 'T1' ? null : 'F1'));
    expect(one.firings).toBe(1);
    expect(one.cautions).toContain(
      'No firing is noted for T1: as a whole tile it is compared with no other.',
    );
    expect(fired(() => 'F1').cautions).toEqual([]);
  });

  it('zones that all came out alike', () => {
    const found = analyseTrial(ladder([9, 9, 9, 9], [9, 9]), request([COATS]));
    expect(found.sentence).toContain('came out alike, so no factor can be seen to have made a difference');
    expect(found.effects[0]).toMatchObject({ verdict: 'cannot tell', low: null, high: null, p: 1 });
  });

  it('no zones, no factors, a factor twice, a step of nothing', () => {
    expect(() => analyseTrial([], request([COATS]))).toThrow('found none of 0');
    expect(() => analyseTrial(ladder([3]), request([]))).toThrow('at least one factor');
    expect(() => analyseTrial(ladder([3]), request([COATS, COATS]))).toThrow('found coats twice');
    expect(() => analyseTrial(ladder([3]), request([{ ...COATS, step: 0 } as Factor]))).toThrow(
      'coats has none',
    );
  });
});

describe('predictChance', () => {
  const zones = ladder([2, 4, 3, 5]);

  it('has a band no narrower than the zones allow where all tiles turn at one setting, and leaving one out tells nothing', () => {
    const alike = ladder([4, 4, 4, 4, 4, 4, 4, 4], [9, 9]);
    const asked = { ...request([COATS]), against: 'coats', points: 6 } as const;
    const table = trialTable(alike, asked);
    const { at, covariance, without } = fitChance(table, table.terms, 'coats');
    const row = [1, 3];
    const dot = (v: readonly number[]) => row[0]! * v[0]! + row[1]! * v[1]!;
    const error = Math.sqrt(dot(covariance.map((c) => dot(c))));
    const jackknife = Math.sqrt((7 / 8) * without.reduce((sum, w) => sum + (dot(w) - dot(at)) ** 2, 0));
    expect(error).toBeGreaterThan(3 * jackknife);
    const { low, high } = predictChance(alike, asked).points[2]!;
    const share = (push: number) => 1 / (1 + Math.exp(-push));
    expectClose([low, high], [share(dot(at) - 1.959964 * error), share(dot(at) + 1.959964 * error)], {
      relative: 1e-6,
    });
  });

  it('rises with thickness within 0 and 1, its band around it', () => {
    const { points, data, of } = predictChance(zones, { ...request([COATS]), against: 'coats' });
    const rising = points.every((p, i) => i === 0 || p.chance > points[i - 1]!.chance);
    expect([rising, of, data.length]).toEqual([true, 'glossy', 24]);
    for (const p of points)
      expect(0 < p.low && p.low <= p.chance && p.chance <= p.high && p.high < 1).toBe(true);
  });

  it('has a mean chance over the zones equal to the share seen', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 7 }), { minLength: 3, maxLength: 6 }), (from) => {
        const own = ladder(from, [0, 2]);
        const { points } = predictChance(own, { ...request([COATS]), against: 'coats', points: 6 });
        const mean = points.reduce((sum, p) => sum + p.chance, 0) / 6;
        const seen = own.filter((z) => z.grade === 'glossy').length / own.length;
        if (seen > 0 && seen < 1) expect(mean).toBeCloseTo(seen, 6);
      }),
      { numRuns: 30 },
    );
  });

  it('is wider than zones taken as independent would give, since tiles differ', () => {
    const all = predictChance(zones, { ...request([COATS]), against: 'coats', points: 3 });
    const asOne = zones.map((z) => ({ ...z, tile: 'T', tileLabel: 'T' }));
    const one = predictChance(asOne, { ...request([COATS]), against: 'coats', points: 3 });
    const width = (c: typeof all) => c.points[1]!.high - c.points[1]!.low;
    expect(width(all)).toBeGreaterThan(width(one));
    expect(one.note).toContain('says nothing of other tiles');
  });

  it('gives one chance a level, the other factors held where asked', () => {
    const asked = { ...request([COATS, ROAST]), against: 'roast', held: { coats: 5 } };
    const { points, held } = predictChance(zones, asked);
    expect(points.map((p) => p.at)).toEqual(['long', 'short']);
    expect(held).toEqual({ coats: 5 });
    const thin = predictChance(zones, { ...asked, held: { coats: 1 } });
    expect(thin.points[0]!.chance).toBeLessThan(points[0]!.chance);
  });

  it('does not say that it held what moved with the factor, nor what stood for another', () => {
    const with10 = zones.map((z) => ({
      ...z,
      factors: { ...z.factors, lead: 10 * Number(z.factors.coats) },
    }));
    const against = { ...request([COATS, LEAD, ROAST]), against: 'lead', held: { coats: 2.5 } };
    const curve = predictChance(with10, against);
    expect(Object.keys(curve.held)).toEqual(['roast']);
    expect(curve.note).toContain('coats and lead changed together');
    expect(curve.note).toContain('Here coats changed along the curve and could not be held.');
    const roast = predictChance(with10, { ...against, against: 'roast' });
    expect(roast.held).toEqual({ coats: 2.5 });
    expect(roast.note).toContain('Here coats is held and stands for lead too.');
  });

  it('does not say that it held a factor that one tile alone tells of', () => {
    const lone = zones.map((z) => ({ ...z, factors: { ...z.factors, lead: z.tile === 'T1' ? 40 : 30 } }));
    const curve = predictChance(lone, { ...request([COATS, LEAD]), against: 'coats' });
    expect(curve.held).toEqual({});
    expect(curve.note).toContain('lead differed on one tile only and could not be held');
  });

  it('refuses a share, a factor that does not vary, and one that only one tile tells of', () => {
    expect(() =>
      predictChance(zones, { ...request([COATS], { outcome: 'share' }), against: 'coats' }),
    ).toThrow('needs gloss grades');
    expect(() => predictChance(zones, { ...request([COATS]), against: 'roast' })).toThrow(
      'needs zones in which it varies',
    );
    const lone = zones.map((z) => ({
      ...z,
      factors: { ...z.factors, roast: z.tile === 'T1' ? 'long' : 'short' },
    }));
    expect(() => predictChance(lone, { ...request([ROAST]), against: 'roast' })).toThrow(
      'found only one tile that tells',
    );
  });
});
