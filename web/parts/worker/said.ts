import { RequirementError } from '../../../api/domain/requirement.ts';

export interface Done {
  readonly done: number;
  readonly of: number;
}
export type Said<Value> = { readonly value: Value } | { readonly reason: string };

/** In a worker: errors lose their class on the way out of it, so a requirement goes as an answer. */
export function saying<Value>(work: () => Value): Said<Value> {
  try {
    return { value: work() };
  } catch (error) {
    if (error instanceof RequirementError) return { reason: error.message };
    throw error;
  }
}

/** In a worker: takes every step, and tells how far it has come. */
export function toTheEnd<Value>(steps: Iterator<Done, Value>, tell: (done: Done) => void): Value {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    tell(step.value);
  }
}
