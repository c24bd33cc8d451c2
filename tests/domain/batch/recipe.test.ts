import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fireBatch } from '../../../api/domain/batch/batch.ts';
import { subsets } from '../../../api/domain/batch/feasible-ranges.ts';
import { fewMaterials } from '../../../api/domain/batch/few-materials.ts';
import { fireAt } from '../../../api/domain/batch/fire.ts';
import { materialFromFormula } from '../../../api/domain/batch/material.ts';
import { missingMaterials } from '../../../api/domain/batch/missing-material.ts';
import { nearestBatch, type RecipeSolution } from '../../../api/domain/batch/nearest-batch.ts';
import { fitRecipe, valueAt } from '../../../api/domain/batch/recipe-fit.ts';
import { type RecipeProblem, recipeModel, restrictRecipe } from '../../../api/domain/batch/recipe-model.ts';
import { scaleBatch } from '../../../api/domain/batch/scale.ts';
import { starterShelf } from '../../../api/domain/batch/shelf.ts';
import { percentOfMoles } from '../../../api/domain/batch/unity.ts';
import { aitchisonDistance } from '../../../api/domain/composition/aitchison.ts';

const shelf = starterShelf();
const by = (...ids: string[]) => ids.map((id) => shelf.find((m) => m.id === id)!);
const fire = fireAt({ celsius: 850 });
const amounts = (solution: RecipeSolution) =>
  Object.fromEntries(solution.lines.map((line) => [line.material.id, line.amount]));

/** Sequential quadratic programming of scipy from 60 starts: tests/fixtures/batch/README.md. */
const fixture = JSON.parse(readFileSync(new URL('../../fixtures/batch/scipy.json', import.meta.url), 'utf8'));
interface Reference {
  readonly target: Record<string, number>;
  readonly ids: string[];
  readonly metric: 'distance' | 'error';
  readonly x: number[];
  readonly value: number;
}

describe('the nearest batch agrees with scipy', () => {
  it.each(fixture.nearest as Reference[])('by $metric with $ids', ({ target, ids, metric, x, value }) => {
    const model = recipeModel({ target: { parts: target }, materials: by(...ids), fire });
    const fit = fitRecipe(model, metric);
    expect(fit.converged).toBe(true);
    expect(fit.value).toBeLessThanOrEqual(value + 1e-9 * (1 + value));
    if (value > 1e-6) expect(fit.value).toBeGreaterThan(value * (1 - 1e-6));
    x.forEach((wanted, i) => {
      expect(Math.abs(fit.x[i]! - wanted)).toBeLessThan(5e-3);
    });
  });
});

const mixable = by(
  'cerussite',
  'quartz',
  'kaolinite',
  'potash-feldspar',
  'calcite',
  'pyrolusite',
  'hematite',
);
const mixture = fc
  .array(fc.integer({ min: 1, max: 100 }), { minLength: 7, maxLength: 7 })
  .map((parts) => parts.map((p) => (100 * p) / parts.reduce((a, b) => a + b, 0)));
const targetOf = (shares: number[]) => {
  const { oxides } = fireBatch(
    mixable.map((material, i) => ({ material, amount: shares[i]! })),
    fire,
  );
  return Object.fromEntries(oxides.map((o) => [o.oxide, o.percent]));
};

describe('a target that the materials can make', () => {
  it('is found again by both metrics, to the gram', () => {
    fc.assert(
      fc.property(mixture, (shares) => {
        const near = nearestBatch({ target: { parts: targetOf(shares) }, materials: mixable, fire });
        for (const solution of [near.byDistance, near.byError]) {
          const found = amounts(solution);
          mixable.forEach(({ id }, i) => {
            expect(found[id] ?? 0).toBeCloseTo(shares[i]!, 3);
          });
          expect(solution.distance).toBeLessThan(1e-4);
          expect(solution.rows.every((row) => row.judgement === 'met')).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });
  it('gives the same batch when every figure of it is scaled', () => {
    fc.assert(
      fc.property(mixture, fc.double({ min: 0.4, max: 1.05, noNaN: true }), (shares, k) => {
        const parts = targetOf(shares);
        const scaled = Object.fromEntries(Object.entries(parts).map(([oxide, wt]) => [oxide, wt * k]));
        const [one, other] = [parts, scaled].map((p) =>
          amounts(nearestBatch({ target: { parts: p }, materials: mixable, fire }).byDistance),
        );
        for (const { id } of mixable) expect(other![id] ?? 0).toBeCloseTo(one![id] ?? 0, 4);
      }),
      { numRuns: 30 },
    );
  });
  /** C. F. Binns, The Potter's Craft: 154.8, 30.0, 55.7, 25.8, 48.0 of 314.3, with the weights of his day. */
  it("is Binns's batch of 314.3 for his formula", () => {
    const parts = percentOfMoles({ PbO: 0.6, CaO: 0.3, K2O: 0.1, Al2O3: 0.2, SiO2: 1.6 });
    const feldspar = materialFromFormula({ id: 'feldspar', name: 'feldspar' }, 'K2O·Al2O3·6SiO2');
    const materials = [...by('hydrocerussite', 'calcite', 'kaolinite', 'quartz'), feldspar];
    const { byDistance } = nearestBatch({ target: { parts }, materials, fire });
    const grams = scaleBatch(byDistance.lines, { grams: 314.3, of: 'dry' }, fire);
    const found = Object.fromEntries(grams.map((line) => [line.material.id, line.amount]));
    const printed = { hydrocerussite: 154.8, calcite: 30, feldspar: 55.7, kaolinite: 25.8, quartz: 48 };
    for (const [id, wanted] of Object.entries(printed))
      expect(Math.abs(found[id]! - wanted)).toBeLessThan(0.3);
  });
});

describe('no other batch is nearer', () => {
  const target = { PbO: 48, SiO2: 28, Al2O3: 9, Fe2O3: 4, MnO: 6, K2O: 2, CaO: 3 };
  const materials = by(
    'cerussite',
    'quartz',
    'red-clay',
    'wood-ash',
    'pyrolusite',
    'calcite',
    'potash-feldspar',
  );
  const model = recipeModel({ target: { parts: target }, materials, fire });
  it.each(['distance', 'error'] as const)('by %s, of 2,000 tried at random near and far', (metric) => {
    const { x, value } = fitRecipe(model, metric);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 7, maxLength: 7 }),
        fc.constantFrom(1, 0.1, 0.01, 0.001),
        (noise, size) => {
          const total = noise.reduce((a, b) => a + b, 0) || 1;
          const other = x.map((v, k) => (1 - size) * v + (size * 100 * noise[k]!) / total);
          if (noise.every((v) => v === 0)) return;
          expect(valueAt(model, metric, other)).toBeGreaterThanOrEqual(value * (1 - 1e-7));
        },
      ),
      { numRuns: 2000 },
    );
  });
  it('and the distance is that of Aitchison once nothing is near zero', () => {
    const near = nearestBatch({ target: { parts: target }, materials, fire, floor: 1e-7 }).byDistance;
    const [fired, wanted] = [near.rows.map((r) => r.fired), near.rows.map((r) => r.target)];
    expect(near.distance).toBeCloseTo(aitchisonDistance(fired, wanted), 5);
  });
  it('each metric wins by its own measure', () => {
    const { byDistance, byError } = nearestBatch({ target: { parts: target }, materials, fire });
    expect(byDistance.distance).toBeLessThanOrEqual(byError.distance);
    expect(byError.error).toBeLessThanOrEqual(byDistance.error);
  });
});

describe('bounds', () => {
  const parts = { PbO: 50, SiO2: 35, Al2O3: 10, MnO: 5 };
  const materials = by('cerussite', 'quartz', 'kaolinite', 'pyrolusite');
  const solve = (bounds: RecipeProblem['bounds'] & object) =>
    nearestBatch({ target: { parts }, materials, fire, bounds });
  it('hold in both solutions', () => {
    const { byDistance, byError } = solve({ cerussite: { most: 40 }, kaolinite: { least: 30 } });
    for (const solution of [byDistance, byError]) {
      expect(amounts(solution).cerussite).toBeLessThanOrEqual(40 + 1e-9);
      expect(amounts(solution).kaolinite).toBeGreaterThanOrEqual(30 - 1e-9);
      expect(Object.values(amounts(solution)).reduce((a, b) => a + b, 0)).toBeCloseTo(100, 8);
    }
  });
  it('fix a part where least is most', () => {
    expect(amounts(solve({ pyrolusite: { least: 12, most: 12 } }).byDistance).pyrolusite).toBeCloseTo(12, 8);
  });
  it.each([
    [{ cerussite: { least: 60 }, kaolinite: { least: 50 } }, 'allow 110 to'],
    [
      { cerussite: { most: 10 }, quartz: { most: 10 }, kaolinite: { most: 10 }, pyrolusite: { most: 10 } },
      'to 40 %',
    ],
    [{ cerussite: { least: 30, most: 20 } }, 'least ≤ most'],
    [{ gold: { most: 20 } }, 'gold is not'],
  ])('that contradict themselves are refused: %j', (bounds, words) => {
    expect(() => solve(bounds as RecipeProblem['bounds'] & object)).toThrow(words);
  });
});

describe('at most so many materials', () => {
  const parts = { PbO: 50, SiO2: 30, Al2O3: 8, MnO: 6, Fe2O3: 4, K2O: 2 };
  const materials = by(
    'cerussite',
    'litharge',
    'quartz',
    'kaolinite',
    'red-clay',
    'pyrolusite',
    'hausmannite',
    'potash-feldspar',
  );
  const model = recipeModel({ target: { parts }, materials, fire });
  it.each(['distance', 'error'] as const)(
    'is the best of all combinations by %s, found by trying each here',
    (metric) => {
      for (const k of [1, 2, 3, 4]) {
        const found = fewMaterials(model, metric, k);
        const all = [...subsets(materials.length, k)].map(
          (some) => fitRecipe(restrictRecipe(model, some), metric).value,
        );
        expect(found.proven).toBe(true);
        expect([...found.x].filter((x) => x > 1e-4).length).toBeLessThanOrEqual(k);
        expect(found.value).toBeLessThanOrEqual(Math.min(...all) * (1 + 1e-5));
      }
    },
  );
  it('comes nearer with every material more', () => {
    const values = [1, 2, 3, 4, 5].map((k) => fewMaterials(model, 'distance', k).value);
    values.slice(1).forEach((value, i) => {
      expect(value).toBeLessThanOrEqual(values[i]! * (1 + 1e-6));
    });
  });
  it('is not called proven where the combinations are too many to try', () => {
    const large = recipeModel({ target: { parts }, materials: shelf, fire });
    const found = fewMaterials(large, 'distance', 4);
    expect(found.proven).toBe(false);
    expect(found.how).toContain('not surely the best');
    expect([...found.x].filter((x) => x > 1e-4).length).toBeLessThanOrEqual(4);
    expect(found.value).toBeGreaterThanOrEqual(fitRecipe(large, 'distance').value * (1 - 1e-9));
  });
  it.each([
    [0, 'at least 1 material'],
    [1.5, 'at least 1 material'],
  ])('refuses %s', (k, words) => expect(() => fewMaterials(model, 'error', k)).toThrow(words));
  it('refuses fewer than bounds ask for', () => {
    const bounds = { quartz: { least: 1 }, kaolinite: { least: 1 } };
    const bound = recipeModel({ target: { parts }, materials, fire, bounds });
    expect(() => fewMaterials(bound, 'error', 1)).toThrow('fewer fixed parts');
  });
});

describe('what cannot be met is said', () => {
  const problem = {
    target: { parts: { PbO: 55, SiO2: 33, MnO: 7, CuO: 5 } },
    materials: by('cerussite', 'quartz'),
    fire,
  };
  it('oxide by oxide, with the reason', () => {
    const { rows } = nearestBatch(problem).byError;
    const copper = rows.find((row) => row.oxide === 'CuO')!;
    expect(copper).toMatchObject({ judgement: 'too low', fired: 0, factor: 0 });
    expect(copper.because).toContain('none of the chosen materials holds Cu');
  });
  it('with the material of the shelf that would mend it, best first', () => {
    const mended = missingMaterials(problem, shelf);
    const ids = mended.map((m) => m.id);
    expect(ids).toEqual(expect.arrayContaining(['pyrolusite', 'malachite', 'tenorite']));
    expect(ids).not.toContain('cerussite');
    for (const { after, before } of mended) expect(after).toBeLessThan(before);
    mended.slice(1).forEach((m, i) => {
      expect(m.after).toBeGreaterThanOrEqual(mended[i]!.after);
    });
    expect(mended.find((m) => m.id === 'pyrolusite')!.mends).toContain('MnO');
  });
  it('and nothing is offered where nothing is missing', () => {
    const met = { target: { parts: { PbO: 60, SiO2: 40 } }, materials: by('cerussite', 'quartz'), fire };
    expect(nearestBatch(met).byDistance).toMatchObject({ distance: 0, besides: [], warnings: [] });
    expect(missingMaterials(met, shelf)).toEqual([]);
  });
  it('and what the batch brings besides the target, as it will be once fired', () => {
    const target = { parts: { PbO: 55, SiO2: 33, Al2O3: 12 } };
    const { lines, besides, warnings } = nearestBatch({
      ...{ target, materials: by('cerussite', 'quartz', 'red-clay'), fire },
    }).byError;
    const fired = fireBatch(lines, fire).oxides;
    for (const { oxide, percent } of besides) {
      expect(target.parts).not.toHaveProperty(oxide);
      expect(percent).toBe(fired.find((one) => one.oxide === oxide)!.percent);
    }
    expect(besides.map(({ oxide }) => oxide)).toContain('Fe2O3');
    expect(warnings.join(' ')).toMatch(/wt% of the fired paint is oxides that the target does not name: /);
    const kept = nearestBatch({
      target: { parts: { ...target.parts, Fe2O3: 0, MgO: 0, K2O: 0, CaO: 0, Na2O: 0, TiO2: 0 } },
      ...{ materials: by('cerussite', 'quartz', 'red-clay', 'kaolinite'), fire },
    }).byError;
    expect(kept.besides.map(({ oxide }) => oxide)).not.toContain('Fe2O3');
    expect(kept.rows.find(({ oxide }) => oxide === 'Fe2O3')!.fired).toBeLessThan(0.1);
  });
  it('without letting an oxide out of reach pull the others out of shape', () => {
    const { rows, distance } = nearestBatch(problem).byDistance;
    const fired = Object.fromEntries(rows.map((row) => [row.oxide, row.fired]));
    expect(fired.PbO! / fired.SiO2!).toBeCloseTo(55 / 33, 2);
    expect(distance).toBeGreaterThan(4);
  });
  it('where a material holds some, but can never bring enough', () => {
    const materials = by('cerussite', 'quartz', 'red-clay');
    const { rows, lines } = nearestBatch({ ...problem, materials }).byDistance;
    expect(rows.find((row) => row.oxide === 'MnO')!.because).toMatch(/no mixture can pass 0\.\d+ wt%/);
    expect(lines[0]!.material.id).toBe('cerussite');
  });
  it('where an oxide rides along with another', () => {
    const parts = { SiO2: 80, Al2O3: 1, K2O: 19 };
    const { rows } = nearestBatch({
      target: { parts },
      materials: by('potash-feldspar', 'quartz'),
      fire,
    }).byDistance;
    expect(rows.find((row) => row.oxide === 'Al2O3')).toMatchObject({ judgement: 'too high' });
  });
  it('a partial target is closed with a warning', () => {
    expect(nearestBatch({ ...problem, target: { parts: { PbO: 30, SiO2: 20 } } }).warnings[0]).toContain(
      'sums to 50',
    );
  });
});

describe('what cannot be a target is refused', () => {
  const materials = by('cerussite', 'quartz');
  it.each([
    [{ PbO: 120, SiO2: 60 }, 'found 180'],
    [{ PbO: -5, SiO2: 60 }, 'PbO is -5'],
    [{ PbO: 0.6, SiO2: 0.4 }, 'from 5 to 110'],
    [{ Pb: 40, PbO: 40, SiO2: 20 }, 'each element once'],
    [{ Glaze: 50, SiO2: 50 }, 'Glaze is none'],
    [{ PbO: 100 }, 'at least two oxides'],
    [{ PbO: Number.POSITIVE_INFINITY, SiO2: 1 }, 'zero or more'],
  ])('%j', (parts, words) => {
    expect(() =>
      recipeModel({ target: { parts: parts as Record<string, number> }, materials, fire }),
    ).toThrow(words);
  });
  it('no material at all', () =>
    expect(() => nearestBatch({ target: { parts: { PbO: 50, SiO2: 50 } }, materials: [], fire })).toThrow(
      'at least one material',
    ));
  it('materials that hold none of it', () =>
    expect(() =>
      nearestBatch({ target: { parts: { MnO: 50, CuO: 50 } }, materials: by('quartz'), fire }),
    ).toThrow(/100 %|none does/));
});
