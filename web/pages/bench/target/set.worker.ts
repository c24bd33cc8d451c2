import { expose } from 'comlink';
import {
  type BatchSetOptions,
  type BatchSetProgress,
  batchSet,
} from '../../../../api/domain/batch/batch-set.ts';
import { type Mending, missingMaterials } from '../../../../api/domain/batch/missing-material.ts';
import type { RecipeProblem } from '../../../../api/domain/batch/recipe-model.ts';
import type { BatchSet } from '../../../../api/domain/batch/set-summary.ts';
import type { TargetSpread } from '../../../../api/domain/batch/target-spread.ts';
import type { Material } from '../../../../api/domain/batch/types.ts';
import { RequirementError } from '../../../../api/domain/requirement.ts';

export interface SetRequest {
  readonly problem: Omit<RecipeProblem, 'target'>;
  readonly spread: TargetSpread;
  readonly options: Partial<BatchSetOptions>;
}
export type Said<Value> = { readonly value: Value } | { readonly reason: string };

/** Errors lose their class on the way out of a worker, so a requirement goes as an answer. */
function saying<Value>(work: () => Value): Said<Value> {
  try {
    return { value: work() };
  } catch (error) {
    if (error instanceof RequirementError) return { reason: error.message };
    throw error;
  }
}

const bench = {
  set(request: SetRequest, tell: (progress: BatchSetProgress) => void): Said<BatchSet> {
    return saying(() => {
      const run = batchSet(request.problem, request.spread, request.options);
      for (;;) {
        const step = run.next();
        if (step.done) return step.value;
        tell(step.value);
      }
    });
  },
  missing(problem: RecipeProblem, shelf: readonly Material[]): Said<Mending[]> {
    return saying(() => missingMaterials(problem, shelf));
  },
};
export type BenchWorker = typeof bench;

expose(bench);
