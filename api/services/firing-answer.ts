import type { firing } from '../../db/schema/schema.ts';
import type { FiringRecord, KeptReading } from '../contract/firing.ts';
import { litAt, openStage } from '../domain/firing/fire-marks.ts';
import { readingBounds } from '../domain/firing/hand-reading.ts';
import { hottestChannel } from '../domain/firing/summary-words.ts';
import type { Bounded, FiringSummary } from '../domain/firing/types.ts';
import { attempt } from './failure.ts';
import { logOf } from './sheet.ts';
import { logAndSummary } from './stored-log.ts';

export type FiringRow = typeof firing.$inferSelect;

/** A firing as it is told; in lists without its curves, which are long. */
export function firingAnswer(
  row: FiringRow,
  tiles: readonly string[],
  { curves }: { readonly curves: boolean },
): FiringRecord {
  const {
    studyId: _study,
    digest: _d,
    logProblems: _p,
    logName: _n,
    logBytes: _b,
    logSha256: _h,
    ...kept
  } = row;
  const noted = logOf(row);
  const readings = (noted.readings as KeptReading[]).map(withBounds);
  const { log = null, summary = null } = logAndSummary(row) ?? {};
  const answer = {
    ...kept,
    readings,
    lit: litAt(noted.marks),
    open: openStage(noted),
    log: log && { ...log, curves: curves ? log.curves : [] },
    summary,
    peak: peakOf(summary, readings),
    tiles: [...tiles],
    createdAt: row.createdAt.toISOString(),
    updatedAt: row.updatedAt.toISOString(),
  };
  return answer as FiringRecord;
}

/** A reading by hand can miss the top, so it counts only where there is no log. */
function peakOf(
  summary: FiringSummary | null,
  readings: readonly { readonly bounds: Bounded | null }[],
): FiringRecord['peak'] {
  const logged = hottestChannel(summary?.channels ?? [])?.peak;
  if (logged) {
    const { value, low, high } = logged;
    return { value, low, high, from: 'log' };
  }
  const bounds = readings.flatMap((one) => one.bounds ?? []);
  if (bounds.length === 0) return null;
  return { ...bounds.reduce((best, one) => (one.value > best.value ? one : best)), from: 'reading' };
}

/** The reading with what its instrument's error leaves open. */
function withBounds(taken: KeptReading) {
  const tried = attempt(() => readingBounds(taken.reading));
  return 'value' in tried
    ? { ...taken, bounds: tried.value, reason: null }
    : { ...taken, bounds: null, reason: tried.reason };
}
