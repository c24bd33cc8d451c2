import { expose } from 'comlink';
import { type BatchSetOptions, batchSet } from '../../../../api/domain/batch/batch-set.ts';
import { type Mending, missingMaterials } from '../../../../api/domain/batch/missing-material.ts';
import type { RecipeProblem } from '../../../../api/domain/batch/recipe-model.ts';
import type { BatchSet } from '../../../../api/domain/batch/set-summary.ts';
import type { TargetSpread } from '../../../../api/domain/batch/target-spread.ts';
import type { Material } from '../../../../api/domain/batch/types.ts';
import { type Done, type Said, saying, toTheEnd } from '../../../parts/worker/said.ts';

export interface SetRequest {
  readonly problem: Omit<RecipeProblem, 'target'>;
  readonly spread: TargetSpread;
  readonly options: Partial<BatchSetOptions>;
}

const bench = {
  set({ problem, spread, options }: SetRequest, tell: (done: Done) => void): Said<BatchSet> {
    return saying(() => toTheEnd(batchSet(problem, spread, options), tell));
  },
  missing(problem: RecipeProblem, shelf: readonly Material[]): Said<Mending[]> {
    return saying(() => missingMaterials(problem, shelf));
  },
};
export type BenchWorker = typeof bench;

expose(bench);
