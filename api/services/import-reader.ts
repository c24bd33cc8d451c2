import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import { RequirementError } from '../domain/requirement.ts';
import { codeOf } from './failure.ts';
import type { ReadMessage, ReadTask } from './import-task.ts';

/** A file that needs more is refused rather than let the service run out of memory. */
const MOST_MEMORY_MB = 384;

/**
 * Reads a file in a thread of its own, so that the service goes on answering. Yields what the thread says; it waits
 * between messages until the caller is done with the last one. Throws a RequirementError where the file is refused.
 */
export async function* readInWorker(task: ReadTask, signal?: AbortSignal): AsyncGenerator<ReadMessage> {
  const worker = new Worker(new URL('./import-worker.mjs', import.meta.url), {
    workerData: task,
    transferList: 'bytes' in task.source ? [task.source.bytes.buffer as ArrayBuffer] : [],
    execArgv: [],
    resourceLimits: { maxOldGenerationSizeMb: MOST_MEMORY_MB, maxYoungGenerationSizeMb: 16 },
  });
  try {
    for (;;) {
      const message = await nextMessage(worker, signal);
      if (message.is === 'refused') throw new RequirementError(message.message);
      if (message.is === 'end') return;
      yield message;
      worker.postMessage('next');
    }
  } finally {
    await worker.terminate();
  }
}

async function nextMessage(worker: Worker, signal?: AbortSignal): Promise<ReadMessage> {
  try {
    const [message] = await once(worker, 'message', signal ? { signal } : {});
    return message as ReadMessage;
  } catch (error) {
    if (codeOf(error) !== 'ERR_WORKER_OUT_OF_MEMORY') throw error;
    throw new RequirementError(
      `a file must be readable within ${MOST_MEMORY_MB} MB of memory; this one is not: split it`,
    );
  }
}
