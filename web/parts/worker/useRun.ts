import { useCallback, useEffect, useRef, useState } from 'react';
import { type Asking, begin, IDLE, type Run } from './run.ts';
import type { Said } from './said.ts';

/** Long work in a worker beside the page: how far it has come, then what it said. `stop` ends it at once. */
export function useRun<Api, Value>(open: () => Worker) {
  const [run, setRun] = useState<Run<Value>>(IDLE);
  const end = useRef<() => void>(() => {});
  const stop = useCallback(() => {
    end.current();
    setRun(IDLE);
  }, []);
  useEffect(() => () => end.current(), []);
  const start = useCallback(
    (asking: Asking<Api, Value>): Promise<Said<Value> | null> => {
      end.current();
      const { close, said } = begin(open(), asking, setRun);
      end.current = close;
      return said;
    },
    [open],
  );
  return { run, start, stop };
}
