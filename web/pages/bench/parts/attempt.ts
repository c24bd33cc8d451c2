import { RequirementError } from '../../../../api/domain/requirement.ts';

export type Outcome<Value> =
  | { readonly value: Value; readonly reason: null }
  | { readonly value: null; readonly reason: string };

/** A requirement that what was typed does not meet is something to show; anything else is a fault of ours. */
export function attempt<Value>(work: () => Value): Outcome<Value> {
  try {
    return { value: work(), reason: null };
  } catch (error) {
    if (error instanceof RequirementError) return { value: null, reason: error.message };
    throw error;
  }
}
