import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { hostname, tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FolderInUse, lockFolder } from '../../db/folder-lock.ts';

const ignore = () => {};
let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'nearsherd-lock-'));
});
afterEach(() => rm(folder, { recursive: true, force: true }));

/** Another process that takes the folder and holds it. */
async function holder() {
  const code = `import { lockFolder } from ${JSON.stringify(path.resolve('db/folder-lock.ts'))};
    await lockFolder(${JSON.stringify(folder)}, () => process.exit(3)); console.log('held'); setInterval(() => {}, 1000);`;
  const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', code], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  const refused = once(child, 'exit').then(([code]) =>
    Promise.reject(new Error(`it ended with code ${code}`)),
  );
  await Promise.race([once(child.stdout, 'data'), refused]);
  refused.catch(ignore);
  return child;
}

describe('a data folder', () => {
  it('is refused to a second taker, with the way out, until the first lets go', async () => {
    const release = await lockFolder(folder, ignore);
    const refused = await lockFolder(folder, ignore).catch((error: Error) => error);
    expect(refused).toBeInstanceOf(FolderInUse);
    expect((refused as Error).message).toMatch(/must belong to one process.*NEARSHERD_DATA.*DATABASE_URL/s);
    await release();
    await (await lockFolder(folder, ignore))();
  });

  it('is refused while another process holds it, whose id is told', async () => {
    const child = await holder();
    await expect(lockFolder(folder, ignore)).rejects.toThrow(`process ${child.pid} on ${hostname()}`);
    child.kill('SIGKILL');
    await once(child, 'exit');
  });

  it('is taken over from a process that was killed', async () => {
    const child = await holder();
    child.kill('SIGKILL');
    await once(child, 'exit');
    const release = await lockFolder(folder, ignore);
    const owner = JSON.parse(await readFile(path.join(folder, 'owner.json'), 'utf8'));
    expect(owner.pid).toBe(process.pid);
    await release();
  });

  it('is refused when its owner was only asleep, as on a closed laptop, and not lost to it', async () => {
    const child = await holder();
    child.kill('SIGSTOP');
    await pause(2_500);
    const refused = lockFolder(folder, ignore).catch((error: Error) => error);
    child.kill('SIGCONT');
    expect(await refused).toBeInstanceOf(FolderInUse);
    expect(child.exitCode).toBe(null);
    child.kill('SIGKILL');
    await once(child, 'exit');
  });

  it('is taken over when its lock has long been silent and its owner’s number belongs to somebody else', async () => {
    await mkdir(path.join(folder, 'in-use'));
    const long = new Date(Date.now() - 600_000);
    await utimes(path.join(folder, 'in-use'), long, long);
    await writeFile(path.join(folder, 'owner.json'), JSON.stringify({ pid: process.ppid, host: hostname() }));
    const release = await lockFolder(folder, ignore);
    await release();
  });

  it('goes to one of several who would take over a dead owner’s lock at once', async () => {
    await mkdir(path.join(folder, 'in-use'));
    const long = new Date(Date.now() - 600_000);
    await utimes(path.join(folder, 'in-use'), long, long);
    const takers = await Promise.allSettled([1, 2, 3].map(holder));
    const winners = takers.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
    await vi.waitUntil(() => winners.filter((child) => child.exitCode === null).length === 1);
    for (const child of winners) child.kill('SIGKILL');
  });

  it('tells its owner when its lock is taken away', async () => {
    const lost = vi.fn();
    const release = await lockFolder(folder, lost);
    await rm(path.join(folder, 'in-use'), { recursive: true });
    await vi.waitUntil(() => lost.mock.calls.length > 0, { timeout: 10_000 });
    expect(lost.mock.calls[0]![0]).toBeInstanceOf(Error);
    await release().catch(ignore);
  });
});
