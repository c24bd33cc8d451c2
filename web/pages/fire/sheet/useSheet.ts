import { useCallback, useEffect, useRef, useState } from 'react';
import type { Sheet } from '../../../../api/contract/sheet.ts';
import { isGone, readSheet } from './send.ts';
import { forgetSheet, keepSheet, keptSheet } from './store.ts';

const EVERY = 30_000;

export interface SheetState {
  readonly sheet: Sheet | null;
  /** When the service last answered, by this phone's clock. */
  readonly heardAt: string | null;
  /** Whether its last answer came just now, rather than from what this phone keeps. */
  readonly live: boolean;
  readonly error: unknown;
}

/** The sheet as the service has it; without an answer, as this phone last had it. Asked again every half minute. */
export function useSheet(path: string) {
  const [state, setState] = useState<SheetState>({ sheet: null, heardAt: null, live: false, error: null });
  const asking = useRef(false);
  const hear = useCallback(
    async (sheet: Sheet) => {
      const heardAt = new Date().toISOString();
      setState({ sheet, heardAt, live: true, error: null });
      await keepSheet({ address: path, sheet, keptAt: heardAt });
    },
    [path],
  );
  const look = useCallback(async () => {
    if (asking.current) return;
    asking.current = true;
    try {
      await hear(await readSheet(path));
    } catch (error) {
      if (isGone(error)) await forgetSheet(path);
      const kept = isGone(error) ? undefined : await keptSheet(path);
      const at = kept ? { sheet: kept.sheet, heardAt: kept.keptAt } : { sheet: null, heardAt: null };
      setState({ ...at, live: false, error });
    } finally {
      asking.current = false;
    }
  }, [path, hear]);
  useEffect(() => {
    look();
    const again = setInterval(look, EVERY);
    window.addEventListener('online', look);
    return () => {
      clearInterval(again);
      window.removeEventListener('online', look);
    };
  }, [look]);
  return { ...state, hear, look };
}
