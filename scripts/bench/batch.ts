import { fireBatch } from '../../api/domain/batch/batch.ts';
import { batchSet } from '../../api/domain/batch/batch-set.ts';
import { fireAt } from '../../api/domain/batch/fire.ts';
import { materialFromAnalysis } from '../../api/domain/batch/material.ts';
import { nearestBatch } from '../../api/domain/batch/nearest-batch.ts';
import { starterShelf } from '../../api/domain/batch/shelf.ts';
import { insideSpread, type TargetSpread, targetSpreadOf } from '../../api/domain/batch/target-spread.ts';
import type { Material } from '../../api/domain/batch/types.ts';
import { fitReference } from '../../api/domain/reference/fit.ts';
import { DEFAULT_MODEL } from '../../api/domain/reference/types.ts';
import { randomStream } from '../../api/domain/statistics/random.ts';

/**
 * Times target → batch with 40 materials and 15 oxides (wanted: one solution under 20 ms, 2,000 draws inside a group
 * under 2 s) and the fired result of an edited batch. Run: npm run bench -- batch. All data invented.
 */
const OXIDES = {
  ...{ SiO2: 33, Al2O3: 6, Fe2O3: 2.5, PbO: 45, MnO: 5, CuO: 0.8, TiO2: 0.4, CaO: 2.5, MgO: 0.9 },
  ...{ K2O: 1.6, Na2O: 0.6, P2O5: 0.3, ZnO: 0.2, BaO: 0.3, SnO2: 0.1 },
};
const stream = randomStream(20261125);

function inventedMaterials(count: number): Material[] {
  return Array.from({ length: count }, (_, i) => {
    const raw = Object.keys(OXIDES).map((oxide) => [oxide, Math.exp(2 * stream.normal())] as const);
    const total = raw.reduce((sum, [, v]) => sum + v, 0);
    const values = Object.fromEntries(raw.map(([oxide, v]) => [oxide, (92 * v) / total]));
    return materialFromAnalysis({ id: `x${i}`, name: `invented earth ${i}` }, { values, lossOnIgnition: 8 });
  });
}

const materials = [...starterShelf(), ...inventedMaterials(15)];
const fire = fireAt({ celsius: 850 });

function inventedGroup(): TargetSpread {
  const samples = Array.from({ length: 60 }, (_, i) => {
    const raw = Object.entries(OXIDES).map(
      ([oxide, v]) => [oxide, v * Math.exp(0.15 * stream.normal())] as const,
    );
    const total = raw.reduce((sum, [, v]) => sum + v, 0);
    const amounts = Object.fromEntries(
      raw.map(([oxide, v]) => [
        oxide,
        { value: (100 * v) / total, limit: null, sigma: null, sigmaBasis: null, resolution: null },
      ]),
    );
    const about = { role: 'reference', measured: 'paint', spots: 1, rawTotal: 100 } as const;
    return { id: `s${i}`, label: `s${i}`, group: 'g', ...about, amounts };
  });
  const model = fitReference(samples, { ...DEFAULT_MODEL, groups: ['g'] }, { g: 'invented ware' });
  return targetSpreadOf(model, model.groups[0]!);
}

function median(times: number[]): number {
  return times.sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
}

function time(work: () => void, repeats: number): number {
  return median(
    Array.from({ length: repeats }, () => {
      const start = performance.now();
      work();
      return performance.now() - start;
    }),
  );
}

export async function bench(): Promise<void> {
  oneSolution();
  setInside();
}

function oneSolution(): void {
  const problem = { target: { parts: OXIDES }, materials, fire };
  const first = time(() => nearestBatch(problem), 1);
  const one = time(() => nearestBatch(problem), 30);
  console.log(
    `target → batch, ${materials.length} materials × 15 oxides, both metrics: first ${first.toFixed(1)} ms, median ${one.toFixed(2)} ms (wanted < 20)`,
  );
  const few = time(() => nearestBatch({ ...problem, atMost: 5 }), 1);
  console.log(`the same with at most 5 materials: ${few.toFixed(0)} ms`);
  const batch = nearestBatch(problem).byDistance.lines;
  console.log(
    `fired result of a batch of ${batch.length} materials: ${time(() => fireBatch(batch, fire), 50).toFixed(2)} ms`,
  );
}

function setInside(): void {
  const spread = inventedGroup();
  console.log(
    `group: n ${spread.n}, ${spread.axes.length} directions, centre inside: ${insideSpread(spread.mean, spread)}`,
  );
  const start = performance.now();
  const cpu = process.cpuUsage();
  const run = batchSet({ materials, fire }, spread, { draws: 2000 });
  let step = run.next();
  while (!step.done) step = run.next();
  const wall = (performance.now() - start) / 1000;
  const used = process.cpuUsage(cpu);
  console.log(
    `2,000 draws inside a group: ${wall.toFixed(2)} s, of it processor ${((used.user + used.system) / 1e6).toFixed(2)} s (wanted < 2)`,
  );
  console.log(step.value.words);
}
