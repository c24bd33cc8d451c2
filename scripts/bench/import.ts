/**
 * A CSV of 50,000 analyses brought in over HTTP while others ask: the most memory the service takes, how long it
 * takes, and how long others wait meanwhile. Embedded database, where all share one connection. Wanted: under 600 MB,
 * and 200 ms for others.
 */
import { readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import type { ServiceProcess } from '../../tests/support/process.ts';
import { largeCsv } from './large-csv.ts';
import { onService } from './service.ts';
import { ms, report } from './time.ts';

const ROWS = 50_000;
const MOST_MB = 600;
const MOST_MS = 200;

export async function bench(): Promise<void> {
  await onService(async ({ api, pid }) => {
    const study = await api.newStudy('Large');
    const other = (await api.post('/api/demo')).body.id as string;
    const small = [`/api/studies/${other}`, `/api/studies/${other}/specimens?limit=50`, '/api/lookups'];
    const quiet: number[] = [];
    for (let i = 0; i < 20; i++) quiet.push(await timed(api, small[i % small.length]!));
    const before = memory(pid);
    const start = performance.now();
    const { body } = await api.startImport(study, { file: { name: 'large.csv', content: largeCsv(ROWS) } });
    const waits: number[] = [];
    let progress = await api.get(`/api/studies/${study}/imports/${body.id}`);
    let seen = 0;
    for (let i = 0; progress.body.status === 'running'; i++) {
      waits.push(await timed(api, small[i % small.length]!));
      progress = await api.get(`/api/studies/${study}/imports/${body.id}`);
      if (progress.body.rowsRead > 0 && progress.body.rowsRead < ROWS) seen++;
      await pause(20);
    }
    if (progress.body.status !== 'done') throw new Error(progress.body.outcome.message);
    report(
      `${ROWS.toLocaleString('en')} rows, ${progress.body.analyses} analyses`,
      ms(performance.now() - start),
    );
    report(
      'most memory',
      `${memory(pid).most} MB (${before.now} MB before); ${(memory(pid).most / MOST_MB).toFixed(2)} of ${MOST_MB} MB`,
    );
    report('answers that showed progress', String(seen));
    report('others wait, median, 99 %, worst', quantiles(waits).map(ms).join(', '));
    report('the same with nothing else to do', quantiles(quiet).map(ms).join(', '));
    const late = waits.filter((wait) => wait > MOST_MS).length;
    report(`others that waited over ${MOST_MS} ms`, `${late} of ${waits.length}`);
  });
}

async function timed(api: ServiceProcess['api'], path: string): Promise<number> {
  const start = performance.now();
  const { status } = await api.get(path);
  if (status !== 200) throw new Error(`${path} answered ${status}`);
  return performance.now() - start;
}

function quantiles(times: readonly number[]): number[] {
  const sorted = times.toSorted((a, b) => a - b);
  return [0.5, 0.99, 1].map((q) => sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))]!);
}

/** Resident memory in MB, now and at its most, as Linux keeps account of it. */
function memory(pid: number): { now: number; most: number } {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8');
  const field = (name: string) =>
    Math.round(Number(new RegExp(`${name}:\\s+(\\d+)`).exec(status)?.[1]) / 1024);
  return { now: field('VmRSS'), most: field('VmHWM') };
}
