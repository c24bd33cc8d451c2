import { once } from 'node:events';
import { parentPort, workerData } from 'node:worker_threads';
import { RequirementError } from '../domain/requirement.ts';
import { interpret } from '../intake/interpret.ts';
import { previewOf } from '../intake/preview.ts';
import { readPasted, readTable } from '../intake/read-table.ts';
import type { DraftAnalysis, Table } from '../intake/types.ts';
import { rememberable, understand } from '../intake/understand.ts';
import type { ReadMessage, ReadTask, StagedDraft } from './import-task.ts';

/** What runs in the reading thread: one file, told message by message, each only when the last one is dealt with. */
const port = parentPort!;

async function say(message: ReadMessage): Promise<void> {
  const answered = once(port, 'message');
  port.postMessage(message);
  await answered;
}

async function work(task: ReadTask): Promise<void> {
  const { source, options } = task;
  const table = 'text' in source ? await readPasted(source.text) : await readTable(source.bytes, options);
  const remembered = task.remembered[understand(table).fingerprint] ?? null;
  const choices = task.choices ?? {};
  if (task.what === 'preview')
    return say({ is: 'preview', preview: await previewOf(table, { remembered, choices }) });
  const { fingerprint, choices: settled } = understand(table, remembered, choices);
  await say({ is: 'opened', fingerprint, toRemember: rememberable(settled), problems: table.warnings });
  await readAll(table, settled);
}

const staged = ({ values, ...draft }: DraftAnalysis): StagedDraft => ({
  ...draft,
  reported: JSON.stringify(values),
});

async function readAll(table: Table, choices: Parameters<typeof interpret>[1]): Promise<void> {
  for (const { analyses, ...part } of interpret(table, choices))
    await say({ is: 'part', part: { ...part, analyses: analyses.map(staged) } });
}

try {
  await work(workerData as ReadTask);
  port.postMessage({ is: 'end' } satisfies ReadMessage);
} catch (error) {
  if (!(error instanceof RequirementError)) throw error;
  port.postMessage({ is: 'refused', message: error.message } satisfies ReadMessage);
}
