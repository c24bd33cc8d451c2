import type { Sheet, SheetNote } from '../../../../api/contract/sheet.ts';
import { Refusal, refusalFrom } from '../../../problem.ts';
import type { PictureNote } from './store.ts';

/** A network that takes longer than this is none: the note waits. */
const PATIENCE = 15_000;
const PICTURE_PATIENCE = 120_000;

async function asked(path: string, init: RequestInit = {}, patience = PATIENCE): Promise<Sheet> {
  const got = await fetch(path, { ...init, signal: AbortSignal.timeout(patience) });
  if (!got.ok) throw await refusalFrom(got);
  return (await got.json()) as Sheet;
}

export const readSheet = (path: string) => asked(path);
export const sendNote = (path: string, note: SheetNote | PictureNote) =>
  note.kind === 'picture' ? sendPicture(path, note) : sendWords(path, note);

function sendPicture(path: string, { id, noted, at, tile, file }: PictureNote) {
  const body = new FormData();
  const told = { id, noted, at, ...(tile === null ? {} : { tile }) };
  for (const [name, value] of Object.entries(told)) body.set(name, value);
  body.set('file', file);
  return asked(`${path}/pictures`, { method: 'POST', body }, PICTURE_PATIENCE);
}

const sendWords = (path: string, note: SheetNote) =>
  asked(`${path}/notes`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify([note]),
  });

/** The service has read the note and will not take it: sending again would change nothing. */
export const isFinal = (error: unknown): error is Refusal =>
  error instanceof Refusal &&
  error.status >= 400 &&
  error.status < 500 &&
  ![408, 425, 429].includes(error.status);

/** The sheet itself is no longer to be had: deleted, taken back or expired. */
export const isGone = (error: unknown): error is Refusal =>
  error instanceof Refusal && [403, 404, 410].includes(error.status);
