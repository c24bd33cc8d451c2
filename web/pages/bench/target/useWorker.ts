import { proxy, type Remote, wrap } from 'comlink';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { BatchSetProgress } from '../../../../api/domain/batch/batch-set.ts';
import type { Mending } from '../../../../api/domain/batch/missing-material.ts';
import type { RecipeProblem } from '../../../../api/domain/batch/recipe-model.ts';
import type { BatchSet } from '../../../../api/domain/batch/set-summary.ts';
import type { Material } from '../../../../api/domain/batch/types.ts';
import type { BenchWorker, Said, SetRequest } from './set.worker.ts';

function startWorker(): { readonly stop: () => void; readonly bench: Remote<BenchWorker> } {
  const worker = new Worker(new URL('./set.worker.ts', import.meta.url), { type: 'module' });
  return { stop: () => worker.terminate(), bench: wrap<BenchWorker>(worker) };
}

export interface SetRun {
  readonly progress: BatchSetProgress | null;
  readonly said: Said<BatchSet> | null;
  readonly error: unknown;
}
const IDLE: SetRun = { progress: null, said: null, error: null };

/** The set of batches inside a group, found beside the page; `stop` ends it at once. */
export function useBatchSet() {
  const [run, setRun] = useState<SetRun>(IDLE);
  const end = useRef<() => void>(() => {});
  const stop = useCallback(() => {
    end.current();
    end.current = () => {};
    setRun(IDLE);
  }, []);
  useEffect(() => () => end.current(), []);
  const start = useCallback(async (request: SetRequest) => {
    end.current();
    const { bench, stop: kill } = startWorker();
    let live = true;
    end.current = () => {
      live = false;
      kill();
    };
    setRun({ ...IDLE, progress: { done: 0, of: request.options.draws ?? 2000 } });
    try {
      const said = await bench.set(
        request,
        proxy((progress) => live && setRun({ ...IDLE, progress })),
      );
      if (live) setRun({ ...IDLE, said });
    } catch (error) {
      if (live) setRun({ ...IDLE, error });
    } finally {
      kill();
    }
  }, []);
  return { run, start, stop };
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
    const { bench, stop } = startWorker();
    let live = true;
    return () => {
      live = false;
      clearTimeout(pause);
      stop();
    };
  }, [problem, shelf]);
  return said && said.of === problem ? said.said : null;
}
