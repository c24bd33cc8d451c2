import type { firing } from '../../db/schema/schema.ts';
import type { FiringLog } from '../contract/firing-log.ts';
import { shiftLog } from '../domain/firing/shift-log.ts';
import { summariseLog } from '../domain/firing/summary.ts';
import type { AirStage, FiringSummary, LogDigest } from '../domain/firing/types.ts';
import type { ChannelChoice, ReadLog } from '../intake/log/types.ts';

/** Temperatures between which rates are averaged, °C. */
export const RATE_BANDS = [100, 300, 600, 800];
const MOST_PROBLEMS = 200;

/** What is kept of a log in the firing's row. */
interface StoredLog {
  readonly digest: LogDigest;
  /** Seconds from lighting to its first reading. */
  readonly begins: number;
  readonly channels: readonly (ChannelChoice & { readonly heading: string })[];
}

export interface LogFile {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}

/** The columns of a firing's row that hold its log. */
export function logColumns({ digest, understanding, problems }: ReadLog, file: LogFile, begins: number) {
  const channels = understanding.channels.map(({ why: _, sure: __, ...kept }) => kept);
  const stored: StoredLog = { digest, begins, channels };
  return {
    digest: stored as unknown,
    logProblems: problems.slice(0, MOST_PROBLEMS).map((one) => one.message) as unknown,
    logName: file.name,
    logBytes: file.bytes,
    logSha256: file.sha256,
  };
}

export const NO_LOG = { digest: null, logProblems: null, logName: '', logBytes: null, logSha256: '' };

/** The same log on the fire's clock, begun at another time. */
export const begunAt = (digest: unknown, begins: number): unknown => ({ ...(digest as StoredLog), begins });

/** The log on the fire's clock, and what it says; null where there is none. */
export function logAndSummary(
  row: typeof firing.$inferSelect,
): { log: FiringLog; summary: FiringSummary; digest: LogDigest } | null {
  if (row.digest === null) return null;
  const stored = row.digest as StoredLog;
  const digest = shiftLog(stored.digest, stored.begins);
  const { rows, interval, startedAt, gaps } = digest;
  const summary = summariseLog(digest, {
    stages: row.stages as AirStage[],
    rateBands: RATE_BANDS,
    thresholds: row.thresholds.toSorted((a, b) => a - b),
  });
  const channels = stored.channels.map((channel, i) => {
    const { readings = 0, spikes = 0 } = digest.channels[i] ?? {};
    return { ...channel, readings, spikes };
  });
  const curves = digest.channels.map(({ channel, curve, spikePoints }) => ({
    ...{ name: channel.name, points: [...curve], spikes: [...spikePoints] },
  }));
  const log = {
    ...{ fileName: row.logName, bytes: row.logBytes ?? 0, sha256: row.logSha256 },
    ...{ rows, interval, startedAt, begins: stored.begins, channels, curves, gaps: [...gaps] },
    problems: (row.logProblems ?? []) as string[],
  };
  return { log, summary, digest };
}
