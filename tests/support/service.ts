import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface RunningService {
  /** Where it listens, as it printed it: `http://127.0.0.1:41234`. */
  readonly address: string;
  readonly stop: () => Promise<void>;
}

const PATIENCE = 90_000;

/** Starts the built service as a user would, on a free port and a data folder of its own. */
export async function startService(more: Record<string, string> = {}): Promise<RunningService> {
  if (!existsSync('dist/web/index.html'))
    throw new Error('The pages must be built before they are tested: run `npm run build` first.');
  const data = await mkdtemp(join(tmpdir(), 'nearsherd-browser-'));
  const { DATABASE_URL: _, ...env } = process.env;
  const child = spawn(process.execPath, ['--import', 'tsx', 'api/main.ts'], {
    env: { ...env, PORT: '0', NEARSHERD_DATA: data, ...more },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const stop = async () => {
    await ended(child);
    await rm(data, { recursive: true, force: true });
  };
  try {
    return { address: await printedAddress(child), stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

function printedAddress(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const fail = (why: string) =>
      reject(new Error(`The service must print its address; ${why}. It said:\n${said}`));
    const timer = setTimeout(() => fail(`it printed none in ${PATIENCE / 1000} s`), PATIENCE);
    const hear = (chunk: Buffer) => {
      said += chunk.toString();
      const address = /http:\/\/(127\.0\.0\.1|localhost|\[::1\]):\d+/.exec(said)?.[0];
      if (!address) return;
      clearTimeout(timer);
      resolve(address);
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('exit', (code) => {
      clearTimeout(timer);
      fail(`it ended with code ${code}`);
    });
  });
}

function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
  return new Promise((resolve) => {
    const force = setTimeout(() => child.kill('SIGKILL'), 10_000);
    child.once('exit', () => {
      clearTimeout(force);
      resolve();
    });
    child.kill('SIGTERM');
  });
}
