import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trialMethods, trialReferences } from '../../../api/domain/report/trial-methods.ts';
import { analyseTrial } from '../../../api/domain/trials/analyse.ts';
import type { Effect } from '../../../api/domain/trials/types.ts';

const METHODS = [
  'exact-conditional',
  'exact-permutation',
  'sampled-permutation',
  'approximate-permutation',
  'penalised',
];
const effectBy = (method: string) => ({ method, level: 0.95 }) as unknown as Effect;
const about = {
  zones: 12,
  tiles: 3,
  firings: 2,
  outcome: 'glossy',
  models: [],
  tangles: [],
  leftOut: [],
} as const;

describe('the methods of a trial', () => {
  it('cite exactly the publications that are listed, whatever was used', () => {
    const used = fc.array(fc.constantFrom(...METHODS), {
      minLength: 1,
      maxLength: 6,
    });
    fc.assert(
      fc.property(used, (chosen) => {
        const effects = chosen.map(effectBy);
        const words = trialMethods({ analysis: { ...about, effects }, version: '1' });
        const cited = words.match(/[A-Z]\w+(?: and \w+| et al\.)? \d{4}(?=[;)])/g) ?? [];
        const listed = trialReferences({ effects, models: [] }).map(({ key }) => key);
        expect(cited).toEqual(listed);
      }),
    );
  });

  it('speak of an analysis that was made, with its n', () => {
    const zones = ['matt', 'matt', 'matt', 'glossy', 'glossy', 'glossy'].map((grade, i) => ({
      ...{ id: `${i}`, label: `${i}`, tile: 't', tileLabel: 'T1', firing: 'F1', glassyShare: null },
      ...{ factors: { coats: i + 1 }, grade: grade as 'matt' | 'glossy' },
    }));
    const factors = [{ name: 'coats', kind: 'number' as const, unit: 'coats', step: 1 }];
    const analysis = analyseTrial(zones, { factors, outcome: 'glossy', seed: 1, level: 0.9 });
    const words = trialMethods({ analysis, version: '9.9.9' });
    expect(words).toContain('6 zones of 1 tile from 1 firing');
    expect(words).toContain('whether a zone came out glossy');
    expect(words).toContain('p is at most 0.1,');
    expect(words).toMatch(/Computed with Nearsherd 9\.9\.9\.$/);
  });

  it('say that permutations were drawn wherever an effect was, by whichever method', () => {
    const held = { ...effectBy('approximate-permutation'), draws: 20_000 };
    const said = (effects: Effect[]) => trialMethods({ analysis: { ...about, effects }, version: '1' });
    expect(said([held])).toContain('a seeded sample of them was drawn');
    expect(said([effectBy('approximate-permutation')])).not.toContain('a seeded sample');
  });

  it('say how factors that moved together were tested, where any did', () => {
    const zones = ['T1', 'T2', 'T3', 'T4'].map((tile, i) => ({
      ...{ id: tile, label: 'A1', tile, tileLabel: tile, firing: 'F1', glassyShare: null },
      ...{ factors: { lead: i % 2, roast: i % 2 }, grade: i % 2 ? ('glossy' as const) : ('matt' as const) },
    }));
    const number = (name: string) => ({ name, kind: 'number' as const, unit: '', step: 1 });
    const said = (...names: string[]) =>
      trialMethods({
        analysis: analyseTrial(zones, { factors: names.map(number), outcome: 'glossy', seed: 1 }),
        version: '1',
      });
    expect(said('lead', 'roast')).toContain('the column that they share');
    expect(said('lead')).not.toContain('the column that they share');
  });

  it('say within the clause that no firing is noted', () => {
    const words = trialMethods({ analysis: { ...about, effects: [], firings: 0 }, version: '1' });
    expect(words).toMatch(/^12 zones of 3 tiles \(no firing noted\) were compared/);
  });

  it('name no test where nothing could be compared', () => {
    const words = trialMethods({ analysis: { ...about, effects: [] }, version: '1' });
    expect(words).not.toMatch(/Firth|permut|exact conditional/);
    expect(trialReferences({ effects: [], models: [] })).toEqual([]);
  });
});
