/** What a figure shows, kept outside React: a slider or a drag changes it and only the figure is drawn again. */
export interface Source<Data> {
  readonly get: () => Data;
  readonly set: (data: Data) => void;
  /** Calls back after each change; answers with the way to stop. */
  readonly subscribe: (listener: () => void) => () => void;
}

export function createSource<Data>(first: Data): Source<Data> {
  let data = first;
  const listeners = new Set<() => void>();
  return {
    get: () => data,
    set: (next) => {
      if (Object.is(next, data)) return;
      data = next;
      for (const listener of [...listeners]) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
