import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type ServiceProcess, startProcess } from '../../tests/support/process.ts';

/** Runs work against a service of its own, as a process with an embedded database in a folder that is then removed. */
export async function onService(work: (service: ServiceProcess) => Promise<void>): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'nearsherd-bench-'));
  const service = await startProcess({ NEARSHERD_DATA: folder });
  try {
    await work(service);
  } finally {
    await service.end('SIGTERM');
    await rm(folder, { recursive: true, force: true });
  }
}
