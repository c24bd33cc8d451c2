import type { firing } from '../../db/schema/schema.ts';
import type { FiringRecord, TakenReading } from '../contract/firing.ts';
import { readingBounds } from '../domain/firing/hand-reading.ts';
import { attempt } from './failure.ts';

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
  const answer = {
    ...kept,
    readings: (row.readings as TakenReading[]).map(withBounds),
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
