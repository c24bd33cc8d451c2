import { and, eq } from 'drizzle-orm';
import { firing } from '../../db/schema/schema.ts';
import type { FiringRecord } from '../contract/firing.ts';
import type { LogPreview, LogQuery } from '../contract/firing-log.ts';
import type { ReadLog } from '../intake/log/types.ts';
import { readLog } from '../intake/logs.ts';
import type { Caller } from './access.ts';
import { Failure } from './failure.ts';
import { firingRow, readFiring } from './firings.ts';
import { IncomingLog, logChoicesOf } from './log-upload.ts';
import { begunAt, logColumns, NO_LOG } from './stored-log.ts';

interface LogSent {
  readonly firing: string;
  readonly query: LogQuery;
  readonly body: ReadableStream<Uint8Array> | null;
}

const MOST_TOLD = 50;

/** How a log is understood and what looks wrong in it, from its first row to its last. Nothing is stored. */
export async function previewLog(caller: Caller, studyId: string, sent: LogSent): Promise<LogPreview> {
  await readFiring(caller, studyId, sent.firing);
  const { understanding, digest, rows, rowsWithoutTime, problems } = await readSent(sent);
  const { duration, startedAt, flags } = digest;
  const peaks = digest.channels.map(({ channel, peak }) => ({
    channel: channel.name,
    celsius: peak?.celsius ?? null,
  }));
  return {
    ...{ ...understanding, rows, rowsWithoutTime, duration, startedAt, peaks, flags },
    problems: problems.slice(0, MOST_TOLD).map((one) => one.message),
  } as unknown as LogPreview;
}

/** Reads a log and puts it in place of the firing's own. Refused or broken off, it changes nothing. */
export async function putLog(caller: Caller, studyId: string, sent: LogSent): Promise<FiringRecord> {
  await readFiring(caller, studyId, sent.firing);
  const { name, begins } = sent.query;
  const read = await readSent(sent);
  const { bytes, sha256 } = read;
  return keep(caller, studyId, {
    id: sent.firing,
    columns: logColumns(read, { name, bytes, sha256 }, begins),
  });
}

/** Puts the log elsewhere on the fire's clock. */
export async function moveLog(
  caller: Caller,
  studyId: string,
  { id, begins }: { id: string; begins: number },
): Promise<FiringRecord> {
  const { digest } = await firingRow(caller, studyId, id);
  if (digest === null) throw new Failure('not found', 'the firing must hold a log; it holds none.');
  return keep(caller, studyId, { id, columns: { digest: begunAt(digest, begins) } });
}

export async function takeOffLog(caller: Caller, studyId: string, id: string): Promise<FiringRecord> {
  await readFiring(caller, studyId, id);
  return keep(caller, studyId, { id, columns: NO_LOG });
}

async function readSent({ query, body }: LogSent): Promise<ReadLog & { bytes: number; sha256: string }> {
  const incoming = new IncomingLog(body);
  try {
    const read = await readLog(incoming.read(), { choices: logChoicesOf(query.choices) });
    return { ...read, bytes: incoming.bytes, sha256: incoming.sha256() };
  } catch (error) {
    await incoming.drain();
    throw error;
  }
}

async function keep(
  caller: Caller,
  studyId: string,
  { id, columns }: { id: string; columns: Partial<typeof firing.$inferInsert> },
): Promise<FiringRecord> {
  await caller.db
    .update(firing)
    .set({ ...columns, updatedAt: new Date() })
    .where(and(eq(firing.studyId, studyId), eq(firing.id, id)));
  return readFiring(caller, studyId, id);
}
