import { proxy, type Remote, wrap } from 'comlink';
import type { Done, Said } from './said.ts';

export interface Run<Value> {
  readonly progress: Done | null;
  readonly said: Said<Value> | null;
  readonly error: unknown;
}
export interface Asking<Api, Value> {
  /** How many steps there will be, to show before the first is told. */
  readonly of: number;
  readonly ask: (worker: Remote<Api>, tell: (done: Done) => void) => Promise<Said<Value>>;
}
export const IDLE = { progress: null, said: null, error: null };

/** Asks a worker once; `said` resolves to null where it failed or was closed first. */
export function begin<Api, Value>(
  worker: Worker,
  { of, ask }: Asking<Api, Value>,
  show: (run: Run<Value>) => void,
): { readonly close: () => void; readonly said: Promise<Said<Value> | null> } {
  let live = true;
  const close = () => {
    live = false;
    worker.terminate();
  };
  const tell = (run: Run<Value>) => {
    if (live) show(run);
    return live ? run.said : null;
  };
  // Progress comes by a port of its own, so the last of it may come after the answer: nothing is told after this.
  const last = (run: Run<Value>) => {
    const said = tell(run);
    close();
    return said;
  };
  tell({ ...IDLE, progress: { done: 0, of } });
  const failed = new Promise<never>((_, reject) => {
    worker.onerror = (event) => reject(new Error(event.message || 'The work stopped.'));
  });
  const work = ask(
    wrap<Api>(worker),
    proxy((progress) => tell({ ...IDLE, progress })),
  );
  const said = Promise.race([work, failed]).then(
    (said) => last({ ...IDLE, said }),
    (error: unknown) => last({ ...IDLE, error }),
  );
  return { close, said };
}
