import type { Unit } from '../domain/composition/types.ts';
import type { Plan } from './plan.ts';
import type { ProblemLog } from './problems.ts';
import type { Row } from './types.ts';

/** A row being read, and where its problems go. */
export interface RowContext {
  readonly row: Row;
  readonly plan: Plan;
  readonly log: ProblemLog;
  /** Specimen of the analysis just above, where there is one. */
  readonly above?: string;
}

/** What the figure is of: from the column, or in the long layout from the row. */
export interface Subject {
  readonly analyte: string;
  readonly unit: Unit;
}

/** A text as it may stand in a message: in one line, and short. */
export function shorten(text: string): string {
  const tidy = text.replace(/\s+/g, ' ').trim();
  return tidy.length > 60 ? `${tidy.slice(0, 57)}…` : tidy;
}
