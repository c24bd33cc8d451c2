import { proxy, wrap } from 'comlink';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Progress } from '../../../../api/domain/uncertainty/types.ts';
import type { Source } from '../../../parts/figure/source.ts';
import type { Drawn } from './drawn.ts';
import type { Asked, DrawSettings } from './draws.ts';
import type { DrawWorker } from './draws.worker.ts';
import type { Slipped } from './placer.ts';

export interface Run {
  readonly progress: Progress | null;
  readonly refusal: string | null;
  readonly error: unknown;
}
const IDLE: Run = { progress: null, refusal: null, error: null };

export interface ToDraw {
  readonly now: Slipped;
  readonly settings: DrawSettings;
  readonly asked: Asked;
}

/** Draws in a worker beside the page; `stop` ends it at once. */
export function useDraws(drawn: Source<Drawn | null>) {
  const [run, setRun] = useState<Run>(IDLE);
  const end = useRef<() => void>(() => {});
  const stop = useCallback(() => {
    end.current();
    setRun(IDLE);
  }, []);
  useEffect(() => () => end.current(), []);
  const start = useCallback(
    async ({ now, settings, asked }: ToDraw) => {
      end.current();
      const worker = new Worker(new URL('./draws.worker.ts', import.meta.url), { type: 'module' });
      let live = true;
      end.current = () => {
        live = false;
        worker.terminate();
      };
      const failed = new Promise<never>((_, reject) => {
        worker.onerror = (event) => reject(new Error(event.message || 'The drawing stopped.'));
      });
      setRun({ ...IDLE, progress: { done: 0, of: settings.draws } });
      try {
        const work = wrap<DrawWorker>(worker).draw(
          asked,
          proxy((progress) => live && setRun({ ...IDLE, progress })),
        );
        const told = await Promise.race([work, failed]);
        if (!live) return;
        setRun('reason' in told ? { ...IDLE, refusal: told.reason } : IDLE);
        if ('value' in told)
          drawn.set({ of: now.placement, choice: now.choice, settings, answer: told.value });
      } catch (error) {
        if (live) setRun({ ...IDLE, error });
      } finally {
        worker.terminate();
      }
    },
    [drawn],
  );
  return { run, start, stop };
}
