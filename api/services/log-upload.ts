import { createHash } from 'node:crypto';
import { logChoices, MOST_LOG_BYTES } from '../contract/firing-log.ts';
import type { LogChoices } from '../intake/log/types.ts';
import { Failure } from './failure.ts';

const MEGABYTE = 1024 * 1024;

/** A log on its way in: counted and hashed while it is read, and never held. */
export class IncomingLog {
  readonly #body: ReadableStreamDefaultReader<Uint8Array> | null;
  readonly #hash = createHash('sha256');
  bytes = 0;

  constructor(body: ReadableStream<Uint8Array> | null) {
    this.#body = body?.getReader() ?? null;
  }

  async *read(): AsyncGenerator<Uint8Array> {
    for (let next = await this.#next(); next && !next.done; next = await this.#next()) {
      this.bytes += next.value.length;
      if (this.bytes > MOST_LOG_BYTES)
        throw new Failure(
          'too large',
          `a log must have at most ${MOST_LOG_BYTES / MEGABYTE} MB; this one has more.`,
        );
      this.#hash.update(next.value);
      yield next.value;
    }
  }

  async #next(): Promise<ReadableStreamReadResult<Uint8Array> | undefined> {
    try {
      return await this.#body?.read();
    } catch {
      throw new Failure('invalid', `a log must arrive whole; it was broken off after ${this.bytes} bytes.`);
    }
  }

  /** Lets the sender finish: one whose connection breaks while it sends never reads why the log was refused. */
  async drain(): Promise<void> {
    try {
      for await (const _ of this.read());
    } catch {
      // Broken off or beyond the limit: nobody waits for the rest.
    }
  }

  sha256(): string {
    return this.#hash.digest('hex');
  }
}

/** What the sender settled, from JSON. */
export function logChoicesOf(text: string | undefined): LogChoices {
  if (text === undefined || text === '') return {};
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw refusal('choices', 'choices about a log must be JSON; this is none.');
  }
  const read = logChoices.safeParse(json);
  if (read.success)
    return Object.fromEntries(Object.entries(read.data).filter(([, value]) => value !== undefined));
  const [issue] = read.error.issues;
  throw refusal(['choices', ...(issue?.path ?? [])].join('.'), issue?.message ?? 'choices do not fit.');
}

const refusal = (at: string, message: string) =>
  new Failure('invalid', `${at}: ${message}`, [{ at, message }]);
