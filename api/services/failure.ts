import type { Fault } from '../contract/problem.ts';
import { RequirementError } from '../domain/requirement.ts';

export type FailureKind =
  | 'not found'
  | 'conflict'
  | 'invalid'
  | 'too large'
  | 'refused'
  | 'gone'
  | 'too many';

/** Why a service cannot do what was asked, in words fit for the caller. Faults say where in the request. */
export class Failure extends Error {
  override readonly name = 'Failure';
  readonly kind: FailureKind;
  readonly faults: readonly Fault[];
  constructor(kind: FailureKind, message: string, faults: readonly Fault[] = []) {
    super(message);
    this.kind = kind;
    this.faults = faults;
  }
}

/** The row found, or a failure that names what was looked for. */
export function found<Row>(row: Row | undefined, what: string): Row {
  if (row === undefined) throw new Failure('not found', `${what} must exist in this study; it does not.`);
  return row;
}

/** A requirement that the data does not meet is an answer here; anything else is a fault of ours and stays thrown. */
export function attempt<Value>(work: () => Value): { value: Value } | { reason: string } {
  try {
    return { value: work() };
  } catch (error) {
    if (error instanceof RequirementError) return { reason: error.message };
    throw error;
  }
}

const UNIQUE_VIOLATION = '23505';

/** Runs a write; a name already taken becomes a conflict in plain words. */
export async function unlessTaken<Result>(write: Promise<Result>, message: string): Promise<Result> {
  try {
    return await write;
  } catch (error) {
    throw codeOf(error) === UNIQUE_VIOLATION ? new Failure('conflict', message) : error;
  }
}

/** The database's own error code, wherever the driver put it. */
export function codeOf(error: unknown): string | null {
  for (let at: unknown = error; at instanceof Error; at = at.cause)
    if ('code' in at && typeof at.code === 'string') return at.code;
  return null;
}
