import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aliasSentences } from '../../../api/domain/trials/aliases.ts';
import { bestFraction, fractionBy } from '../../../api/domain/trials/fraction.ts';
import { planTrial } from '../../../api/domain/trials/plan.ts';
import type { Level, PlannedFactor, PlanRequest } from '../../../api/domain/trials/types.ts';

const factor = (name: string, at: PlannedFactor['at'], levels: readonly Level[]): PlannedFactor => ({
  name,
  unit: null,
  at,
  levels,
});
const COATS = factor('coats', 'zone', [1, 2, 3, 4, 5, 6]);
const ROAST = factor('roast', 'tile', ['short', 'long']);
const LEAD = factor('lead', 'tile', [30, 40]);
const AIR = factor('air', 'tile', ['open', 'smothered']);
const base: PlanRequest = {
  kind: 'ladder',
  factors: [COATS],
  tiles: 4,
  rows: 2,
  columns: 3,
  firings: 1,
  replicates: 1,
  seed: 11,
};
const two = (n: number, at: PlannedFactor['at']) =>
  Array.from({ length: n }, (_, i) => factor('abcdefghij'[i]!, at, [0, 1]));

/**
 * Fractions of resolution IV with the fewest runs, and their generators: NIST Dataplot, *Index of minimal-sample-size
 * resolution-4 2**(k-p) designs* (itl.nist.gov/div898/software/dataplot/text/DEXRES4.TXT), after Box, Hunter & Hunter.
 */
const NIST: readonly [factors: number, runs: number, generators: string[]][] = [
  [4, 8, ['D=ABC']],
  [6, 16, ['E=ABC', 'F=BCD']],
  [7, 16, ['E=ABC', 'F=BCD', 'G=ACD']],
  [8, 16, ['E=BCD', 'F=ACD', 'G=ABC', 'H=ABD']],
  [9, 32, ['F=BCDE', 'G=ACDE', 'H=ABDE', 'I=ABCE']],
  [10, 32, ['F=ABCD', 'G=ABCE', 'H=ABDE', 'I=ACDE', 'J=BCDE']],
];

describe('fractions', () => {
  for (const [factors, runs, generators] of NIST)
    it(`of ${factors} factors in ${runs} runs have resolution IV, as NIST lists`, () => {
      const listed = fractionBy(factors, generators);
      expect([listed.resolution, listed.runs.length]).toEqual([4, runs]);
      const own = bestFraction(factors, Math.log2(runs));
      expect(own.resolution).toBe(4);
      const shortest = (f: typeof own) =>
        f.words.filter((w) => [...w.bits.toString(2)].filter((b) => b === '1').length === 4).length;
      expect(shortest(own)).toBeLessThanOrEqual(shortest(listed));
    });

  it('have every factor balanced and every pair of factors orthogonal, for any number of runs', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 7 }), fc.integer({ min: 2, max: 4 }), (factors, basic) => {
        fc.pre(factors <= 2 ** basic - 1);
        const { runs, words } = bestFraction(factors, basic);
        for (let i = 0; i < factors; i++)
          for (let j = 0; j <= i; j++) {
            const sum = runs.reduce((s, r) => s + (i === j ? r[i]! : r[i]! * r[j]!), 0);
            expect(sum).toBe(0);
          }
        for (const { bits, sign } of words)
          expect(
            runs.every((r) => r.reduce<number>((p, v, i) => (bits & (1 << i) ? p * v : p), 1) === sign),
          ).toBe(true);
      }),
    );
  });

  it('say in words what is mixed up', () => {
    const names = ['lead', 'roast', 'air', 'flux', 'soak'];
    expect(aliasSentences(fractionBy(3, ['C=-AB']), names.slice(0, 3))).toEqual([
      'What lead does cannot be told from what roast and air do together.',
      'What roast does cannot be told from what lead and air do together.',
      'What air does cannot be told from what lead and roast do together.',
    ]);
    expect(aliasSentences(fractionBy(4, ['D=ABC']), names.slice(0, 4)).slice(1)).toEqual([
      'What lead and roast do together cannot be told from what air and flux do together.',
      'What lead and air do together cannot be told from what roast and flux do together.',
      'What roast and air do together cannot be told from what lead and flux do together.',
    ]);
    expect(aliasSentences(fractionBy(5, ['E=ABCD']), names).at(-1)).toBe(
      'Pairs are clear of one another too.',
    );
    expect(aliasSentences(fractionBy(2, ['B=A']), names.slice(0, 2))[0]).toContain('always change together');
  });

  it('refuse generators that do not read as such', () => {
    for (const wrong of ['D=AE', 'A=BC', 'D=AA', 'DABC', 'D='])
      expect(() => fractionBy(4, [wrong])).toThrow(`right of ${wrong}`);
    expect(() => fractionBy(5, ['E=AB', 'E=AC'])).toThrow('a factor of its own on the left');
    expect(() => fractionBy(2, ['A=B', 'B=A'])).toThrow('fewer generators than factors');
  });
});

describe('planTrial', () => {
  it('puts every step of a ladder on every tile, each tile in an order of its own', () => {
    const plan = planTrial(base);
    const orders = plan.tiles.map((t) => t.zones.map((z) => z.settings.coats));
    for (const order of orders) expect(order.toSorted()).toEqual([1, 2, 3, 4, 5, 6]);
    expect(new Set(orders.map(String)).size).toBeGreaterThan(1);
    expect(plan.tiles[0]!.zones.map((z) => z.label)).toEqual(['A1', 'B1', 'C1', 'A2', 'B2', 'C2']);
  });

  it('is the same for the same seed, and another for another', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), (seed) => {
        expect(planTrial({ ...base, seed })).toEqual(planTrial({ ...base, seed }));
      }),
      { numRuns: 20 },
    );
    const many = new Set(
      Array.from({ length: 20 }, (_, seed) => JSON.stringify(planTrial({ ...base, seed }).tiles)),
    );
    expect(many.size).toBe(20);
  });

  it('has every combination of tile and zone settings once a replicate, within each firing', () => {
    fc.assert(
      fc.property(
        fc.record({
          zoneLevels: fc.integer({ min: 2, max: 3 }),
          firings: fc.integer({ min: 1, max: 3 }),
          times: fc.integer({ min: 1, max: 2 }),
          replicates: fc.integer({ min: 1, max: 2 }),
          seed: fc.integer({ min: 0, max: 999 }),
        }),
        ({ zoneLevels, firings, times, replicates, seed }) => {
          const factors = [
            factor(
              'coats',
              'zone',
              Array.from({ length: zoneLevels }, (_, i) => i + 1),
            ),
            ROAST,
            LEAD,
          ];
          const plan = planTrial({
            kind: 'full',
            factors,
            tiles: 4 * times * firings,
            rows: 3,
            columns: 3,
            firings,
            replicates,
            seed,
          });
          for (let f = 1; f <= firings; f++) {
            const zones = plan.tiles.filter((t) => t.firing === f).flatMap((t) => t.zones);
            const counts = new Map<string, number>();
            for (const z of zones) {
              const key = `${z.settings.coats} ${z.settings.roast} ${z.settings.lead}`;
              counts.set(key, (counts.get(key) ?? 0) + 1);
            }
            expect([...counts.values()]).toEqual(
              Array.from({ length: 4 * zoneLevels }, () => times * replicates),
            );
          }
          const places = plan.tiles.map((t) => `${t.firing} ${t.place}`);
          expect(new Set(places).size).toBe(places.length);
          for (const t of plan.tiles) expect(new Set(t.zones.map((z) => z.label)).size).toBe(t.zones.length);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('changes one factor at a time from the first levels', () => {
    const plan = planTrial({
      ...base,
      kind: 'one-at-a-time',
      factors: [ROAST, LEAD, AIR],
      tiles: 4,
      rows: 1,
      columns: 1,
    });
    const settings = plan.tiles.map((t) => `${t.settings.roast} ${t.settings.lead} ${t.settings.air}`);
    expect(settings.toSorted()).toEqual([
      'long 30 open',
      'short 30 open',
      'short 30 smothered',
      'short 40 open',
    ]);
    expect(plan.aliases[0]).toContain('what two do together is not seen');
  });

  it('takes the largest fraction that the tiles hold, and says what it mixes up', () => {
    const plan = planTrial({
      ...base,
      kind: 'fraction',
      factors: [ROAST, LEAD, AIR],
      tiles: 4,
      rows: 1,
      columns: 1,
    });
    expect(plan).toMatchObject({ resolution: 3, generators: ['C=AB'], runs: 4 });
    expect(plan.aliases).toContain('What air does cannot be told from what roast and lead do together.');
    const asked = planTrial({
      ...base,
      kind: 'fraction',
      factors: two(4, 'zone'),
      tiles: 1,
      rows: 2,
      columns: 4,
      generators: ['D=ABC'],
    });
    expect(asked).toMatchObject({ resolution: 4, runs: 8 });
  });

  it('splits a full plan over two firings by the product of all factors, and says what that costs', () => {
    const plan = planTrial({
      ...base,
      kind: 'full',
      factors: [ROAST, LEAD, AIR],
      tiles: 8,
      firings: 2,
      rows: 1,
      columns: 1,
    });
    const sign = (t: (typeof plan.tiles)[number]) =>
      [ROAST, LEAD, AIR].reduce((p, f) => p * (t.settings[f.name] === f.levels[1] ? 1 : -1), 1);
    for (const f of [1, 2]) expect(new Set(plan.tiles.filter((t) => t.firing === f).map(sign)).size).toBe(1);
    expect(plan.aliases.at(-1)).toContain(
      'roast, lead and air do all together cannot be told from the difference between the two firings',
    );
  });

  it('says what p a comparison of tiles can reach at all', () => {
    const note = (tiles: number) =>
      planTrial({ ...base, kind: 'full', factors: [ROAST], tiles }).notes.find((n) => n.startsWith('roast'))!;
    expect(note(4)).toContain(
      'no outcome could give a p below 0.33, so that this plan by itself cannot settle it',
    );
    expect(note(8)).toContain('below 0.029, so that it can be settled');
  });

  it('changes firing factors from firing to firing', () => {
    const fuel = factor('fuel', 'firing', ['oak', 'reed']);
    const plan = planTrial({ ...base, kind: 'full', factors: [fuel, COATS], tiles: 4, firings: 2 });
    const by = [1, 2].map(
      (f) => new Set(plan.tiles.filter((t) => t.firing === f).map((t) => t.settings.fuel)),
    );
    expect(by.map((s) => s.size)).toEqual([1, 1]);
    expect(plan.notes.join(' ')).toContain('whatever else differs between firings goes with it');
  });
});

describe('planTrial refuses, with what would be needed', () => {
  const refused = (more: Partial<PlanRequest>) => () => planTrial({ ...base, ...more });
  it('more factors than tiles can tell', () => {
    expect(refused({ kind: 'one-at-a-time', factors: [ROAST, LEAD, AIR], tiles: 3 })).toThrow(
      'roast, lead and air change only from tile to tile: that needs at least 4 tiles in one firing; found 3',
    );
    expect(refused({ kind: 'one-at-a-time', factors: [ROAST], tiles: 1 })).toThrow(
      'roast changes only from tile to tile: that needs at least',
    );
    expect(refused({ kind: 'fraction', factors: two(4, 'tile'), tiles: 4 })).toThrow(
      '4 runs can tell at most 3 factors apart; found 4',
    );
  });

  it('more settings than zones, uneven firings, too few places', () => {
    expect(refused({ replicates: 2 })).toThrow(
      '6 settings of zones, each 2 times, need 12 zones on a tile; found 6',
    );
    expect(refused({ tiles: 5, firings: 2 })).toThrow('as many tiles in each firing; found 5 for 2');
    expect(refused({ kind: 'full', factors: [ROAST], tiles: 3 })).toThrow(
      'a whole multiple of 2 tiles in each firing; found 3',
    );
    expect(refused({ places: ['back'] })).toThrow('found 1 places for 4 tiles');
    expect(refused({ places: ['back', '2', '3', '4'] })).toThrow('needs a name; found 2');
    expect(
      refused({ kind: 'full', factors: [factor('fuel', 'firing', ['oak', 'reed'])], firings: 1 }),
    ).toThrow('2 settings of firings');
  });

  it('factors without levels, twice, or of a kind that does not fit', () => {
    expect(refused({ factors: [] })).toThrow('at least one factor');
    expect(refused({ factors: [COATS, COATS] })).toThrow('found coats twice');
    expect(refused({ factors: [factor('coats', 'zone', [1, '1'])] })).toThrow('coats has one twice');
    expect(refused({ factors: [COATS, factor('brush', 'zone', ['a', 'b'])] })).toThrow(
      'a ladder needs one factor',
    );
    expect(refused({ kind: 'fraction', factors: [COATS] })).toThrow('coats has 6');
    expect(refused({ kind: 'fraction', factors: [...two(2, 'zone'), ROAST], generators: ['B=A'] })).toThrow(
      'all change on the same unit',
    );
  });

  it('counts that are none', () => {
    expect(refused({ tiles: 0 })).toThrow('1 to 200 tiles, a whole number; found 0');
    expect(refused({ rows: 2.5 })).toThrow('1 to 26 rows, a whole number; found 2.5');
  });
});
