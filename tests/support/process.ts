import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { type Client, remoteClient } from './api-client.ts';

export interface ServiceProcess {
  readonly address: string;
  readonly api: Client;
  readonly pid: number;
  /** What it has printed so far. */
  readonly said: () => string;
  /** Sends a signal and waits for the end; its exit code, null when the signal itself ended it. */
  readonly end: (signal: NodeJS.Signals) => Promise<number | null>;
}
export interface Ended {
  readonly code: number | null;
  readonly said: string;
}

/** Starts the service as `npm start` does, on any free port, and waits for its address. */
export async function startProcess(env: Record<string, string>): Promise<ServiceProcess> {
  const { child, said } = launch(env);
  const exited = once(child, 'exit');
  const address = await Promise.race([addressOf(child, said), exited.then(() => null)]);
  if (address === null) throw new Error(`the service ended before it listened:\n${said()}`);
  const end = async (signal: NodeJS.Signals) => {
    child.kill(signal);
    const [code] = await exited;
    return code as number | null;
  };
  return { address, api: remoteClient(address), pid: child.pid!, said, end };
}

/** Starts the service where it should refuse to run, and waits for its end. */
export async function runToEnd(env: Record<string, string>): Promise<Ended> {
  const { child, said } = launch(env);
  const [code] = await once(child, 'exit');
  return { code: code as number | null, said: said() };
}

function launch(env: Record<string, string>) {
  const { DATABASE_URL: _, NODE_OPTIONS: __, ...own } = process.env;
  const child = spawn(process.execPath, ['--import', 'tsx', 'api/main.ts'], {
    env: { ...own, PORT: '0', ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let text = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => (text += chunk));
  return { child, said: () => text };
}

async function addressOf(child: ChildProcess, said: () => string): Promise<string> {
  for (;;) {
    const address = /is at (http:\S+)/.exec(said())?.[1];
    if (address !== undefined) return address;
    await once(child.stdout!, 'data');
  }
}
