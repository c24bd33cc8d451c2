import { describe, expect, test } from 'vitest';
import { type Asking, begin, type Run } from '../../../../web/parts/worker/run.ts';
import type { Done, Said } from '../../../../web/parts/worker/said.ts';

function asked(ask: (tell: (done: Done) => void) => Promise<Said<string>>) {
  const told: Run<string>[] = [];
  const worker = Object.assign(new EventTarget(), {
    ...{ ended: 0, onerror: null as ((event: { message: string }) => void) | null },
    postMessage: () => {},
    terminate: () => {
      worker.ended++;
    },
  });
  const asking: Asking<object, string> = { of: 3, ask: (_, tell) => ask(tell) };
  const begun = begin(worker as unknown as Worker, asking, (run) => told.push(run));
  return { ...begun, told, worker };
}

describe('begin', () => {
  test('tells how far the work has come, then what it said, and ends the worker', async () => {
    const { said, told, worker } = asked(async (tell) => {
      tell({ done: 2, of: 3 });
      return { value: 'drawn' };
    });
    expect(await said).toEqual({ value: 'drawn' });
    expect(told.map(({ progress }) => progress?.done ?? null)).toEqual([0, 2, null]);
    expect(told.at(-1)).toEqual({ progress: null, said: { value: 'drawn' }, error: null });
    expect(worker.ended).toBe(1);
  });

  test('tells nothing that comes after the answer: progress has a port of its own', async () => {
    let late: (done: Done) => void = () => {};
    const { said, told } = asked(async (tell) => {
      late = tell;
      return { reason: 'no slip' };
    });
    expect(await said).toEqual({ reason: 'no slip' });
    const heard = told.length;
    late({ done: 3, of: 3 });
    expect(told).toHaveLength(heard);
  });

  test('tells nothing after it is closed, and says null', async () => {
    const { said, told, close, worker } = asked(async () => ({ value: 'too late' }));
    close();
    expect(await said).toBeNull();
    expect(told).toHaveLength(1);
    expect(worker.ended).toBeGreaterThan(0);
  });

  test('hands on what a worker dies of', async () => {
    const { said, told, worker } = asked(() => new Promise(() => {}));
    worker.onerror?.({ message: 'out of memory' });
    expect(await said).toBeNull();
    expect(told.at(-1)?.error).toEqual(new Error('out of memory'));
  });
});
