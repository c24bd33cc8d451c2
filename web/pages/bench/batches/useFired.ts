import { useMemo } from 'react';
import { type Fired, fireHere } from '../fired/compute.ts';
import { attempt, type Outcome } from '../parts/attempt.ts';
import type { Bench } from '../parts/WithShelf.tsx';
import { type BatchForm, type ReadBatch, readBatch } from './batch-form.ts';

export interface FiredForm {
  readonly read: ReadBatch;
  /** Null while nothing has been weighed yet. */
  readonly outcome: Outcome<Fired> | null;
}

/** The fired result of what is typed, at every keystroke. */
export function useFired(form: BatchForm, bench: Bench): FiredForm {
  return useMemo(() => {
    const read = readBatch(form, bench);
    if (read.fault) return { read, outcome: { value: null, reason: read.fault } };
    if (read.lines.length === 0) return { read, outcome: null };
    return { read, outcome: attempt(() => fireHere(read.lines, read.fire, bench.shelf)) };
  }, [form, bench]);
}
