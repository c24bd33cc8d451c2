import { useCallback, useEffect, useRef, useState } from 'react';
import { answer, api } from '../../../client.ts';
import { Refusal } from '../../../problem.ts';
import { useRefresh } from '../../../queries/studies.ts';
import { forgetNote, keepNote, type Note, notesOf, type Waiting } from './waiting.ts';

const { tiles, firings } = api.studies[':study'];

function send(note: Note) {
  const { study } = note;
  if (note.kind === 'zone') {
    const { tile, zone, change: json } = note;
    return answer(tiles[':tile'].zones[':zone'].$patch({ param: { study, tile, zone }, json }));
  }
  const { firing, reading } = note;
  return answer(firings[':firing'].readings.$post({ param: { study, firing }, json: [reading] }));
}

/**
 * Notes kept on this device and sent as soon as the service answers: at once, when the line comes back, and every
 * half minute. One that the service refuses stays, with its reason, until it is thrown away.
 */
export function useWaiting(study: string) {
  const [waiting, setWaiting] = useState<readonly Waiting[]>([]);
  const [refused, setRefused] = useState<{ id: number; error: unknown } | null>(null);
  const busy = useRef(false);
  const refresh = useRef(useRefresh(study));
  const look = useCallback(async () => setWaiting(await notesOf(study)), [study]);
  const flush = useCallback(async () => {
    if (busy.current) return;
    busy.current = true;
    let sent = 0;
    try {
      for (const note of await notesOf(study)) {
        await send(note);
        await forgetNote(note.id);
        sent += 1;
      }
      setRefused(null);
    } catch (error) {
      const [first] = await notesOf(study);
      if (error instanceof Refusal && first) setRefused({ id: first.id, error });
    } finally {
      busy.current = false;
      await look();
      if (sent > 0) await refresh.current();
    }
  }, [study, look]);
  useEffect(() => {
    flush();
    const again = setInterval(flush, 30_000);
    window.addEventListener('online', flush);
    return () => {
      clearInterval(again);
      window.removeEventListener('online', flush);
    };
  }, [flush]);
  const add = async (note: Note) => {
    await keepNote(note);
    await look();
    await flush();
  };
  const drop = async (id: number) => {
    await forgetNote(id);
    setRefused(null);
    await look();
  };
  return { waiting, refused, add, drop, flush };
}
