import type { firing } from '../../db/schema/schema.ts';
import type { FiringRecord, TakenReading } from '../contract/firing.ts';
import { litAt } from '../domain/firing/fire-notes.ts';
import { readingBounds } from '../domain/firing/hand-reading.ts';
import { attempt } from './failure.ts';
import { logOf } from './sheet.ts';

export type FiringRow = typeof firing.$inferSelect;

export function firingAnswer(row: FiringRow, tiles: readonly string[]): FiringRecord {
  const {
    studyId: _study,
    digest: _d,
    logProblems: _p,
    logName: _n,
    logBytes: _b,
    logSha256: _h,
    ...kept
  } = row;
  const log = logOf(row);
  const answer = {
    ...kept,
    readings: (log.readings as TakenReading[]).map(withBounds),
    lit: litAt(log.marks),
    tiles: [...tiles],
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  };
  return answer as FiringRecord;
}

/** The reading with what its instrument's error leaves open. */
function withBounds(taken: TakenReading) {
  const tried = attempt(() => readingBounds(taken.reading));
  return 'value' in tried
    ? { ...taken, bounds: tried.value, reason: null }
    : { ...taken, bounds: null, reason: tried.reason };
}
