import { useState } from 'react';
import { readingBounds } from '../../../../api/domain/firing/hand-reading.ts';
import { RequirementError } from '../../../../api/domain/requirement.ts';
import { Field } from '../../../parts/Field.tsx';
import { readNumber } from '../../../parts/numbers.ts';
import { InstrumentFields } from './InstrumentFields.tsx';
import { type Instrument, KINDS, keepInstrument, keptInstrument, readingBy } from './instrument.ts';
import { minuteOf } from './overlay.ts';
import type { NewNote } from './useNotes.ts';

const LEAST = -50;
const MOST = 1800;

/** A temperature read by hand: typed, with where and by what; everything but the figure is remembered. */
export function TakeReading(at: {
  readonly lit: string | null;
  readonly onNote: (note: NewNote, words: string) => void;
}) {
  const [typed, setTyped] = useState('');
  const [where, setWhere] = useState('');
  const [ago, setAgo] = useState('');
  const [instrument, setInstrument] = useState(keptInstrument);
  const change = (next: Instrument) => {
    setInstrument(next);
    keepInstrument(next);
  };
  const celsius = typed.trim() ? readNumber(typed) : null;
  const late = ago.trim() ? readNumber(ago) : 0;
  const wrong = faultOf(typed, celsius);
  const wrongAgo = late === null || late < 0 || late > 600 ? 'Minutes, 0 to 600.' : null;
  const ready = celsius !== null && wrong === null && wrongAgo === null;
  const note = () => {
    if (!ready) return;
    const time = new Date(Date.now() - 60_000 * late!).toISOString();
    const minute = minuteOf(at.lit, time);
    const words = `${celsius} °C${where && ` ${where}`}${minute === null ? '' : `, minute ${minute}`}`;
    at.onNote({ kind: 'reading', at: time, where, reading: readingBy(instrument, celsius) }, words);
    setTyped('');
    setAgo('');
  };
  return (
    <section className="stack" aria-labelledby="reading">
      <h2 id="reading">A reading by hand</h2>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault();
          note();
        }}
      >
        <Field
          label="Temperature shown (°C)"
          inputMode="decimal"
          value={typed}
          onChange={setTyped}
          wrong={wrong}
        />
        {ready && <Meaning instrument={instrument} celsius={celsius} />}
        <Field label="Where in the fire" value={where} onChange={setWhere} maxLength={120} />
        <details>
          <summary>
            {KINDS.find((one) => one.id === instrument.kind)!.label}, {late ? `${late} min ago` : 'now'}
          </summary>
          <div className="stack">
            <InstrumentFields instrument={instrument} onChange={change} />
            <Field
              label="Minutes ago, if not now"
              inputMode="numeric"
              value={ago}
              onChange={setAgo}
              wrong={wrongAgo}
            />
          </div>
        </details>
        <button type="submit" className="button primary giant" aria-disabled={!ready}>
          Note it
        </button>
      </form>
    </section>
  );
}

function faultOf(typed: string, celsius: number | null): string | null {
  if (!typed.trim()) return null;
  if (celsius === null) return `“${typed.trim()}” is no number.`;
  return celsius < LEAST || celsius > MOST ? `Temperatures from ${LEAST} to ${MOST} °C can be noted.` : null;
}

/** What the instrument's error leaves open. */
function Meaning({ instrument, celsius }: { readonly instrument: Instrument; readonly celsius: number }) {
  try {
    const { low, high, value } = readingBounds(readingBy(instrument, celsius));
    const whole = (n: number) => Math.round(n);
    return (
      <p>
        {instrument.kind === 'infrared' && `Corrected to ${whole(value)} °C: `}
        between {whole(low)} and {whole(high)} °C
        {instrument.kind === 'unknown' && ' by its last digit alone, as its class is not known'}.
      </p>
    );
  } catch (error) {
    if (!(error instanceof RequirementError)) throw error;
    return <p className="wrong">{error.message}.</p>;
  }
}
