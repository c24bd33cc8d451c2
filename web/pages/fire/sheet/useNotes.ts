import { useCallback, useEffect, useRef, useState } from 'react';
import type { Sheet, SheetNote } from '../../../../api/contract/sheet.ts';
import { messageOf } from '../../../problem.ts';
import { isFinal, isGone, sendNote } from './send.ts';
import { dropNote, keepNote, notesOf, type PhoneNote, type PictureNote } from './store.ts';

/** A sent note is shown for this long, then dropped from the phone. */
const SHOWN_FOR = 24 * 3600_000;
const EVERY = 15_000;

type Body<Note> = Note extends unknown ? Omit<Note, 'id' | 'noted' | 'at'> & { readonly at?: string } : never;
/** A note before it has its id and its instant. */
export type NewNote = Body<SheetNote | PictureNote>;

/**
 * Notes of a sheet, kept on this phone and sent as soon as the service answers: at once, when the line comes back, and
 * every quarter minute. Each is sent under its own id, so one whose answer got lost counts once. One that the service
 * refuses stays with its reason until it is thrown away; the others go on.
 */
export function useNotes(path: string, hear: (sheet: Sheet) => Promise<void>) {
  const [notes, setNotes] = useState<readonly PhoneNote[]>([]);
  const busy = useRef(false);
  const again = useRef(false);
  const look = useCallback(async () => setNotes(await notesOf(path)), [path]);
  const flush = useCallback(async () => {
    if (busy.current) {
      again.current = true;
      return;
    }
    busy.current = true;
    try {
      do {
        again.current = false;
        const sheet = await sendAll(path, look);
        if (sheet) await hear(sheet);
      } while (again.current);
    } finally {
      busy.current = false;
      await look();
    }
  }, [path, look, hear]);
  useEffect(() => {
    look().then(flush);
    const timer = setInterval(flush, EVERY);
    window.addEventListener('online', flush);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', flush);
    };
  }, [look, flush]);
  const add = async (body: NewNote, words: string) => {
    const noted = new Date().toISOString();
    const note = { at: noted, ...body, id: crypto.randomUUID(), noted } as SheetNote | PictureNote;
    await keepNote({ id: note.id, sheet: path, note, words, sentAt: null, refused: null });
    await look();
    await flush();
  };
  const drop = async (id: string) => {
    await dropNote(id);
    await look();
  };
  return { notes, add, drop, flush };
}

/** A picture that was sent need not fill the phone. */
const sentOnce = (one: PhoneNote): PhoneNote =>
  one.note.kind === 'picture'
    ? { ...one, note: { ...one.note, file: new File([], one.note.file.name) } }
    : one;

/** Sends what waits, in the order it was noted; stops at the first that finds no answer. */
async function sendAll(path: string, look: () => Promise<void>): Promise<Sheet | null> {
  let heard: Sheet | null = null;
  for (const one of await notesOf(path)) {
    if (one.sentAt !== null) {
      if (Date.now() - Date.parse(one.sentAt) > SHOWN_FOR) await dropNote(one.id);
      continue;
    }
    if (one.refused !== null) continue;
    try {
      heard = await sendNote(path, one.note);
      await keepNote({ ...sentOnce(one), sentAt: new Date().toISOString() });
      await look();
    } catch (error) {
      // A sheet that is gone, as when a link ran out, refuses every note: they wait, to be saved as a file.
      const gone =
        isGone(error) && (error.status !== 404 || !['judgement', 'picture'].includes(one.note.kind));
      if (!isFinal(error) || gone) return heard;
      await keepNote({ ...one, refused: messageOf(error) });
    }
  }
  return heard;
}
