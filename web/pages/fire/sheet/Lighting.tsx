import { useState } from 'react';
import { Button } from '../../../parts/Button.tsx';
import { clockOf, instantOf } from './overlay.ts';
import type { NewNote } from './useNotes.ts';

/** One tap; where the firing has a record already, asked once more, since minutes follow from it. */
export function LitNow({ asks, onLit }: { readonly asks: boolean; readonly onLit: () => void }) {
  const [open, setOpen] = useState(false);
  if (!open)
    return (
      <button type="button" className="button primary giant" onClick={() => (asks ? setOpen(true) : onLit())}>
        Lit now
      </button>
    );
  return (
    <div className="notice caution" role="alert">
      <strong>This firing has a record already.</strong>
      <p>
        Lit now would count every minute noted by the clock from this moment, and readings taken before would
        have none. If it was lit before, say when instead.
      </p>
      <div className="row">
        <button type="button" className="button plain" onClick={onLit}>
          It is being lit now
        </button>
        <Button onPress={() => setOpen(false)}>Leave it</Button>
      </div>
    </div>
  );
}

/** The time of lighting, typed: for a fire lit before anyone looked at the phone. */
export function PutRight({
  lit,
  onNote,
}: {
  readonly lit: string | null;
  readonly onNote: (note: NewNote, words: string) => void;
}) {
  const [open, setOpen] = useState(false);
  const [time, setTime] = useState('');
  if (!open)
    return (
      <Button
        look="quiet"
        onPress={() => {
          setTime(clockOf(lit ?? new Date().toISOString()));
          setOpen(true);
        }}
      >
        {lit === null ? 'It was lit earlier' : 'Put the time right'}
      </Button>
    );
  const at = instantOf(time);
  return (
    <form
      className="put-right"
      onSubmit={(event) => {
        event.preventDefault();
        if (at === null) return;
        onNote({ kind: 'lit', at }, `Lit at ${clockOf(at)}`);
        setOpen(false);
      }}
    >
      <label>
        <span className="label">Lit at</span>
        <input
          className="input"
          type="time"
          required
          value={time}
          onChange={(e) => setTime(e.target.value)}
        />
      </label>
      {lit !== null && <p>Every minute noted at this fire moves with it.</p>}
      <button type="submit" className="button primary" disabled={at === null}>
        Save
      </button>
      <Button onPress={() => setOpen(false)}>Leave it</Button>
    </form>
  );
}
