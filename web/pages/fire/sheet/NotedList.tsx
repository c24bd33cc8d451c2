import type { Sheet } from '../../../../api/contract/sheet.ts';
import { clockOf, minuteOf } from './overlay.ts';
import type { PhoneNote } from './store.ts';

/** This phone's notes, newest first, each sent or waiting; then what others read. */
export function NotedList({ sheet, notes }: { readonly sheet: Sheet; readonly notes: readonly PhoneNote[] }) {
  const mine = notes.filter((one) => one.refused === null).toReversed();
  const own = new Set(notes.map((one) => one.note.at));
  const others = sheet.readings.filter((one) => one.clock === null || !own.has(one.clock)).toReversed();
  if (mine.length + others.length === 0) return null;
  return (
    <section className="stack" aria-labelledby="noted">
      <h2 id="noted">Noted</h2>
      <ul className="noted">
        {mine.map((one) => (
          <li key={one.id}>
            <span>
              {clockOf(one.note.at)} {one.words}
            </span>
            <span className={one.sentAt ? 'tag done' : 'tag caution'}>{one.sentAt ? 'sent' : 'waiting'}</span>
          </li>
        ))}
        {others.map((one) => (
          <li key={`${one.clock} ${one.at} ${one.where} ${one.celsius}`}>
            <span>{otherWords(sheet.lit, one)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function otherWords(lit: string | null, one: Sheet['readings'][number]): string {
  const minute = one.at === null ? one.clock && minuteOf(lit, one.clock) : Math.floor(one.at / 60);
  const when = minute === null ? '' : `Minute ${minute}: `;
  return `${when}${one.celsius} °C${one.where ? ` ${one.where}` : ''}`;
}
