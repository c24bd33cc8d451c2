import { useEffect, useState } from 'react';
import type { Sheet } from '../../../../api/contract/sheet.ts';
import { AIRS, type Air } from '../../../../api/domain/firing/types.ts';
import { Button } from '../../../parts/Button.tsx';
import { clockOf, instantOf, minuteOf } from './overlay.ts';
import type { NewNote } from './useNotes.ts';

interface FireClockProps {
  readonly sheet: Sheet;
  readonly onNote: (note: NewNote, words: string) => void;
}

const AIR_WORDS: Readonly<Record<Air, string>> = {
  oxidising: 'open, clear flame',
  neutral: 'neither',
  reducing: 'smoky, short of air',
  smothered: 'covered up',
};

/** When it was lit, and which air it has had since: one tap each. */
export function FireClock({ sheet, onNote }: FireClockProps) {
  const { lit, air } = sheet;
  const now = useNow();
  return (
    <section className="stack" aria-labelledby="clock">
      <h2 id="clock">The fire</h2>
      {lit === null ? (
        <button type="button" className="button primary giant" onClick={() => onNote({ kind: 'lit' }, 'Lit')}>
          Lit now
        </button>
      ) : (
        <p className="minute">
          <strong>Minute {minuteOf(lit, now) ?? 0}</strong>
          <span>lit at {clockOf(lit)}</span>
        </p>
      )}
      <PutRight lit={lit} onNote={onNote} />
      {lit === null ? (
        <p className="faint">Air can be noted once the time of lighting is.</p>
      ) : (
        <>
          <h3 id="air">Air now{air ? `: ${air.air} since ${clockOf(air.since)}` : ''}</h3>
          {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this grid in every browser */}
          <div className="big two" role="group" aria-labelledby="air">
            {AIRS.map((one) => (
              <button
                key={one}
                type="button"
                className="button plain"
                aria-pressed={air?.air === one}
                onClick={() => onNote({ kind: 'air', air: one }, `Air ${one}`)}
              >
                <span>{one}</span>
                <span className="small">{AIR_WORDS[one]}</span>
              </button>
            ))}
          </div>
          {air && (
            <button
              type="button"
              className="button plain giant"
              onClick={() => onNote({ kind: 'out' }, 'Fire out')}
            >
              The fire is out
            </button>
          )}
        </>
      )}
    </section>
  );
}

/** The time of lighting, typed: for a fire lit before anyone looked at the phone. */
function PutRight({
  lit,
  onNote,
}: {
  readonly lit: string | null;
  readonly onNote: FireClockProps['onNote'];
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
      <button type="submit" className="button primary" disabled={at === null}>
        Save
      </button>
      <Button onPress={() => setOpen(false)}>Leave it</Button>
    </form>
  );
}

/** The instant, again every few seconds. */
function useNow(): string {
  const [now, setNow] = useState(() => new Date().toISOString());
  useEffect(() => {
    const tick = setInterval(() => setNow(new Date().toISOString()), 5_000);
    return () => clearInterval(tick);
  }, []);
  return now;
}
