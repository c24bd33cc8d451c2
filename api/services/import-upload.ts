import { createHash } from 'node:crypto';
import type { Upload } from '../contract/import.ts';
import { choicesAsked } from '../contract/intake.ts';
import type { Choices } from '../intake/types.ts';
import { Failure } from './failure.ts';
import type { ReadTask } from './import-task.ts';

/** An upload opened: what the reading thread needs, and what is noted of the file. */
export interface OpenedUpload {
  readonly source: ReadTask['source'];
  readonly options: ReadTask['options'];
  readonly choices: Partial<Choices> | null;
  readonly fileName: string;
  readonly bytes: number;
  readonly sha256: string;
}

export async function openUpload(upload: Upload): Promise<OpenedUpload> {
  const { file, text, sheet, encoding } = upload;
  if ((file === undefined) === (text === undefined))
    refuse('file', 'an import needs either a file or the text of a table, and not both.');
  const bytes =
    file === undefined ? new TextEncoder().encode(text) : new Uint8Array(await file.arrayBuffer());
  const fileName = file === undefined ? '' : file.name.slice(0, 255);
  return {
    source: text === undefined ? { bytes } : { text },
    options: {
      fileName: fileName === '' ? null : fileName,
      ...(sheet === undefined ? {} : { sheet }),
      ...(encoding === undefined ? {} : { encoding }),
    },
    choices: choicesOf(upload.choices),
    fileName,
    bytes: bytes.length,
    sha256: createHash('sha256').update(bytes).digest('hex'),
  };
}

function choicesOf(text: string | undefined): Partial<Choices> | null {
  if (text === undefined || text === '') return null;
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    refuse('choices', 'choices must be JSON as the preview gave them; this is no JSON.');
  }
  const read = choicesAsked.safeParse(json);
  if (read.success) return read.data as Partial<Choices>;
  const faults = read.error.issues.map((issue) => ({
    at: ['choices', ...issue.path].join('.'),
    message: issue.message,
  }));
  throw new Failure(
    'invalid',
    `choices must be as the preview gave them; ${faults[0]?.at}: ${faults[0]?.message}`,
    faults,
  );
}

function refuse(at: string, message: string): never {
  throw new Failure('invalid', message, [{ at, message }]);
}
