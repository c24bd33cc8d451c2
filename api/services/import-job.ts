import { and, eq } from 'drizzle-orm';
import type { Database } from '../../db/connect.ts';
import { dataImport } from '../../db/schema/schema.ts';
import type { ImportOutcome } from '../contract/import.ts';
import { RequirementError } from '../domain/requirement.ts';
import type { Problem } from '../intake/types.ts';
import { codeOf } from './failure.ts';
import { dropRows, HEARTBEAT } from './import-leftovers.ts';
import { readInWorker } from './import-reader.ts';
import { rememberChoices } from './import-remember.ts';
import type { ReadTask } from './import-task.ts';
import { ImportWriter } from './import-writer.ts';

const MOST_PROBLEMS = 500;
const UNIQUE_VIOLATION = '23505';

interface Job {
  readonly studyId: string;
  readonly importId: string;
  readonly warnings: readonly Problem[];
}
interface Running {
  readonly stop: AbortController;
  readonly ended: Promise<void>;
}
const running = new Map<string, Running>();

/** The import was stopped, here or by another process. */
class Stopped extends Error {
  override readonly name = 'Stopped';
}

export function runImport(db: Database, task: ReadTask, job: Job): void {
  const stop = new AbortController();
  const beat = setInterval(() => {
    say(db, job.importId, { heartbeatAt: new Date() }).catch(() => stop.abort());
  }, HEARTBEAT);
  const ended = bringIn(db, task, { ...job, signal: stop.signal })
    .catch((error) => giveUp(db, job, error))
    .catch((error) => console.error(error))
    .finally(() => {
      clearInterval(beat);
      running.delete(job.importId);
    });
  running.set(job.importId, { stop, ended });
}

/** Stops an import that runs in this process, and waits until nothing of it is left. */
export async function stopJob(importId: string): Promise<void> {
  const job = running.get(importId);
  job?.stop.abort();
  await job?.ended;
}

/** Stops all imports of this process; for its own end. */
export async function stopImports(): Promise<void> {
  await Promise.all([...running.keys()].map(stopJob));
}

async function bringIn(db: Database, task: ReadTask, job: Job & { signal: AbortSignal }): Promise<void> {
  const { studyId, importId } = job;
  const writer = await ImportWriter.open(db, { studyId, importId });
  const problems: Problem[] = [...job.warnings];
  let opened: Parameters<typeof rememberChoices>[2] | null = null;
  for await (const message of readInWorker(task, job.signal)) {
    if (message.is === 'opened') {
      opened = { fingerprint: message.fingerprint, choices: message.toRemember };
      problems.push(...message.problems);
    }
    if (message.is !== 'part') continue;
    const { part } = message;
    problems.push(...part.problems);
    if (!problems.some(isError)) problems.push(...(await writer.write(part.analyses)));
    await say(db, importId, { rowsRead: part.rowsRead, rowsTotal: part.rowCount, heartbeatAt: new Date() });
  }
  if (problems.some(isError)) throw new Refused(problems);
  if (writer.written.analyses === 0)
    throw new RequirementError('an import needs at least one row with an analysis; this file has none');
  await publish(db, writer, { importId, problems });
  if (opened) await rememberChoices(db, studyId, opened);
}

/** Problems in the file that stand in the way. */
class Refused extends Error {
  override readonly name = 'Refused';
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    const errors = problems.filter(isError);
    const more = errors.length === 1 ? '' : ` ${errors.length - 1} more below.`;
    super(`${errors[0]!.message}${more} Nothing was brought in.`);
    this.problems = problems;
  }
}

/** The one small statement by which everything the file brought is there at once. */
async function publish(
  db: Database,
  writer: ImportWriter,
  { importId, problems }: { importId: string; problems: readonly Problem[] },
): Promise<void> {
  const { analyses, specimens } = writer.written;
  const message = `Brought in: ${counted(analyses, 'analysis', 'analyses')}, ${counted(specimens, 'new specimen', 'new specimens')}.`;
  await db.transaction(async (tx) => {
    await writer.join(tx);
    const published = await tx
      .update(dataImport)
      .set({ ...writer.written, status: 'done', finishedAt: new Date(), outcome: outcome(message, problems) })
      .where(and(eq(dataImport.id, importId), eq(dataImport.status, 'running')))
      .returning({ id: dataImport.id });
    if (published.length === 0) throw new Stopped();
  });
}

/** Leaves the study as it was, and says why. */
async function giveUp(db: Database, { importId }: Job, error: unknown): Promise<void> {
  const stopped = error instanceof Stopped || (error instanceof Error && error.name === 'AbortError');
  const known = stopped || error instanceof RequirementError || error instanceof Refused;
  if (!known && codeOf(error) !== UNIQUE_VIOLATION) console.error(error);
  await db
    .update(dataImport)
    .set({
      status: stopped ? 'stopped' : 'failed',
      finishedAt: new Date(),
      outcome: outcome(reason(error, stopped), error instanceof Refused ? error.problems : []),
    })
    .where(and(eq(dataImport.id, importId), eq(dataImport.status, 'running')));
  await dropRows(db, importId);
}

function reason(error: unknown, stopped: boolean): string {
  if (stopped) return 'The import was stopped; nothing of it was kept.';
  if (error instanceof RequirementError || error instanceof Refused) return error.message;
  if (codeOf(error) === UNIQUE_VIOLATION)
    return 'A specimen or ware group named like one in the file was added meanwhile. Nothing was brought in; bring the file in again.';
  return 'The service failed while bringing in the file; its log says where. Nothing was brought in.';
}

/** Notes progress; throws when the import is no longer wanted. */
async function say(
  db: Database,
  importId: string,
  progress: Partial<typeof dataImport.$inferInsert>,
): Promise<void> {
  const rows = await db
    .update(dataImport)
    .set(progress)
    .where(and(eq(dataImport.id, importId), eq(dataImport.status, 'running')))
    .returning({ id: dataImport.id });
  if (rows.length === 0) throw new Stopped();
}

const counted = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;
const isError = (problem: Problem) => problem.severity === 'error';

function outcome(message: string, problems: readonly Problem[]): ImportOutcome {
  return { message, problems: problems.slice(0, MOST_PROBLEMS) };
}
