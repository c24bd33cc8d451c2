import { setTimeout as pause } from 'node:timers/promises';
import { createApp } from '../../api/app.ts';
import type { DataImport } from '../../api/contract/import.ts';
import type { Database } from '../../db/connect.ts';

export interface Answer {
  readonly status: number;
  // biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape
  readonly body: any;
  readonly text: string;
  readonly headers: Headers;
}
export type Client = ReturnType<typeof clientOf>;

/** Asks the service as HTTP would, without a socket. */
export function localClient(db: Database): Client {
  const app = createApp({ db });
  return clientOf(async (path, init) => app.request(`http://localhost${path}`, init));
}

/** Asks a service at an address. */
export function remoteClient(address: string): Client {
  return clientOf((path, init) => fetch(address + path, init));
}

function clientOf(fetcher: (path: string, init: RequestInit) => Promise<Response>) {
  async function ask(method: string, path: string, content?: unknown): Promise<Answer> {
    const json = content !== undefined && !(content instanceof FormData);
    const answer = await fetcher(path, {
      method,
      ...(content === undefined ? {} : { body: json ? JSON.stringify(content) : content }),
      ...(json ? { headers: { 'content-type': 'application/json' } } : {}),
    } as RequestInit);
    const text = await answer.text();
    const isJson = answer.headers.get('content-type')?.includes('json') ?? false;
    return { status: answer.status, body: isJson ? JSON.parse(text) : null, text, headers: answer.headers };
  }

  async function outcome(study: string, id: string): Promise<DataImport> {
    for (const patience = Date.now() + 120_000; Date.now() < patience; await pause(50)) {
      const { body } = await ask('GET', `/api/studies/${study}/imports/${id}`);
      if (body.status !== 'running') return body as DataImport;
    }
    throw new Error('the import did not come to an end in two minutes');
  }

  return {
    ask,
    /** The answer itself, for what is neither JSON nor text. */
    raw: (path: string) => fetcher(path, {}),
    get: (path: string) => ask('GET', path),
    post: (path: string, content?: unknown) => ask('POST', path, content),
    patch: (path: string, content: unknown) => ask('PATCH', path, content),
    delete: (path: string) => ask('DELETE', path),
    outcome,
    newStudy: async (name = 'Study') => (await ask('POST', '/api/studies', { name })).body.id as string,
    preview: (study: string, upload: UploadOf) =>
      ask('POST', `/api/studies/${study}/imports/preview`, formOf(upload)),
    startImport: (study: string, upload: UploadOf) =>
      ask('POST', `/api/studies/${study}/imports`, formOf(upload)),
    /** Brings a file in and waits for what comes of it. */
    bringIn: async (study: string, upload: UploadOf): Promise<DataImport> => {
      const started = await ask('POST', `/api/studies/${study}/imports`, formOf(upload));
      if (started.status !== 202) throw new Error(started.text);
      return outcome(study, started.body.id);
    },
  };
}

export interface UploadOf {
  readonly file?: { readonly name: string; readonly content: string | Uint8Array<ArrayBuffer> };
  readonly text?: string;
  readonly choices?: object;
  readonly sheet?: string;
}

function formOf({ file, text, choices, sheet }: UploadOf): FormData {
  const form = new FormData();
  if (file) form.set('file', new File([file.content], file.name));
  if (text !== undefined) form.set('text', text);
  if (choices) form.set('choices', JSON.stringify(choices));
  if (sheet !== undefined) form.set('sheet', sheet);
  return form;
}
