import type { firing } from '../../db/schema/schema.ts';
import type { FiringRecord } from '../contract/firing.ts';

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
    tiles: [...tiles],
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  };
  return answer as FiringRecord;
}
