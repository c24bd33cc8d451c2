import { type Remote, wrap } from 'comlink';
import { useCallback, useEffect, useState } from 'react';
import type { Mending } from '../../../../api/domain/batch/missing-material.ts';
import type { RecipeProblem } from '../../../../api/domain/batch/recipe-model.ts';
import type { BatchSet } from '../../../../api/domain/batch/set-summary.ts';
import type { Material } from '../../../../api/domain/batch/types.ts';
import type { Said } from '../../../parts/worker/said.ts';
import { useRun } from '../../../parts/worker/useRun.ts';
import type { BenchWorker, SetRequest } from './set.worker.ts';

const openWorker = () => new Worker(new URL('./set.worker.ts', import.meta.url), { type: 'module' });
const DRAWS = 2000;

/** The set of batches inside a group, found beside the page; `stop` ends it at once. */
export function useBatchSet() {
  const { run, start, stop } = useRun<BenchWorker, BatchSet>(openWorker);
  const find = useCallback(
    (request: SetRequest) =>
      start({ of: request.options.draws ?? DRAWS, ask: (bench, tell) => bench.set(request, tell) }),
    [start],
  );
  return { run, find, stop };
}

/** What else of the shelf would bring a recipe nearer, found beside the page. */
export function useMissing(problem: RecipeProblem | null, shelf: readonly Material[]) {
  const [said, setSaid] = useState<{ readonly of: RecipeProblem; readonly said: Said<Mending[]> } | null>(
    null,
  );
  useEffect(() => {
    if (!problem) return;
    const pause = setTimeout(() => {
      bench.missing(problem, [...shelf]).then((answer) => live && setSaid({ of: problem, said: answer }));
    }, 300);
    const worker = openWorker();
    const bench: Remote<BenchWorker> = wrap(worker);
    let live = true;
    return () => {
      live = false;
      clearTimeout(pause);
      worker.terminate();
    };
  }, [problem, shelf]);
  return said && said.of === problem ? said.said : null;
}
