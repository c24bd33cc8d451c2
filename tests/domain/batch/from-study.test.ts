import { describe, expect, it } from 'vitest';
import { fireBatch } from '../../../api/domain/batch/batch.ts';
import { fireAt } from '../../../api/domain/batch/fire.ts';
import { materialAnalysisOf, predictedParts, recipeTargetOf } from '../../../api/domain/batch/from-study.ts';
import { materialFromAnalysis } from '../../../api/domain/batch/material.ts';
import { nearestBatch } from '../../../api/domain/batch/nearest-batch.ts';
import { comparePrediction } from '../../../api/domain/batch/prediction.ts';
import { analyseRoast } from '../../../api/domain/batch/roast.ts';
import { roastMaterial } from '../../../api/domain/batch/roast-material.ts';
import { starterShelf } from '../../../api/domain/batch/shelf.ts';
import type { Amounts } from '../../../api/domain/composition/types.ts';

const amounts = (parts: Record<string, number | null>): Amounts =>
  Object.fromEntries(
    Object.entries(parts).map(([oxide, value]) => [
      oxide,
      {
        value,
        limit: value === null ? 0.1 : null,
        sigma: value === null ? null : 0.3,
        sigmaBasis: 'stated',
        resolution: null,
      },
    ]),
  );
const shelf = starterShelf();
const by = (...ids: string[]) => ids.map((id) => shelf.find((m) => m.id === id)!);
const fire = fireAt({ celsius: 850 });

describe('what the study holds serves the bench', () => {
  it('a sherd is a target, below detection left out', () => {
    const target = recipeTargetOf(amounts({ PbO: 55, SiO2: 40, Al2O3: 5, SnO2: null }));
    expect(target.parts).toEqual({ PbO: 55, SiO2: 40, Al2O3: 5 });
    const near = nearestBatch({ target, materials: by('cerussite', 'quartz', 'kaolinite'), fire });
    expect(near.byDistance.distance).toBeLessThan(1e-6);
    expect(near.byDistance.rows[0]!.sigma).toBeCloseTo(0.3, 10);
  });
  it('a clay analysed with its loss is a material', () => {
    const analysis = materialAnalysisOf(amounts({ SiO2: 58, Al2O3: 22, Fe2O3: 9, LOI: 11 }), 11);
    const clay = materialFromAnalysis({ id: 'c', name: 'clay' }, analysis);
    expect(fireBatch([{ material: clay, amount: 100 }], fire).loss.percent).toBeCloseTo(11, 8);
  });
  it('a batch with a roast weighed once predicts lead with the roast’s doubt in its σ', () => {
    const charge = [{ material: by('galena')[0]!, amount: 100 }];
    const roast = analyseRoast({ charge, massOut: 103, weighing: 0.1, celsius: 800, hours: 3 });
    const roasted = roastMaterial({ id: 'r', name: 'roast' }, roast);
    const predicted = predictedParts(
      fireBatch(
        [
          { material: roasted, amount: 60 },
          { material: by('quartz')[0]!, amount: 40 },
        ],
        fire,
      ),
    );
    expect(predicted.PbO!.sigma).toBeGreaterThan(0.5);
    const measured = Object.fromEntries(Object.entries(predicted).map(([o, p]) => [o, { ...p, sigma: 0.2 }]));
    const { rows } = comparePrediction({ predicted, measured, slip: null });
    for (const row of rows) expect(row.difference).toBeCloseTo(0, 10);
  });
});
