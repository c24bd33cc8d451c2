import { useCallback, useEffect, useRef, useState } from 'react';

const PREFIX = 'nearsherd.draft.';

export function readDraft<Value>(key: string): Value | null {
  try {
    const kept = sessionStorage.getItem(PREFIX + key);
    return kept === null ? null : (JSON.parse(kept) as Value);
  } catch {
    return null;
  }
}
export function keepDraft(key: string, value: unknown) {
  try {
    if (value === null) sessionStorage.removeItem(PREFIX + key);
    else sessionStorage.setItem(PREFIX + key, JSON.stringify(value));
  } catch {
    // Full or refused storage: typing goes on, only a reload would lose it.
  }
}

export interface Draft<Value> {
  readonly value: Value;
  readonly set: (value: Value) => void;
  /** Forgets what was typed: after saving, or when the reader gives up. */
  readonly clear: () => void;
  /** True when the value came back from before a reload. */
  readonly restored: boolean;
}

/** Form input that survives a reload of the page, and is forgotten when saved. */
export function useDraft<Value>(key: string, start: Value): Draft<Value> {
  const [kept] = useState(() => readDraft<Value>(key));
  const [value, setValue] = useState<Value>(kept ?? start);
  const first = useRef(start);
  const set = useCallback(
    (next: Value) => {
      setValue(next);
      keepDraft(key, next);
    },
    [key],
  );
  const clear = useCallback(() => {
    keepDraft(key, null);
    setValue(first.current);
  }, [key]);
  useEffect(() => {
    first.current = start;
  });
  return { value, set, clear, restored: kept !== null };
}
