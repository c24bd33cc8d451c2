import { cautionsFor, FIRST_RULE } from '../domain/batch/safety.ts';
import type { Hazard } from '../domain/batch/types.ts';

/** The cautions that belong to what is handled; local codes and licensed practice come first. */
export function safetyFor(hazards: readonly Hazard[]) {
  return { firstRule: FIRST_RULE, cautions: cautionsFor(hazards) };
}
