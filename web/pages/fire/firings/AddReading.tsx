import { useState } from 'react';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { readNumber } from '../../../parts/numbers.ts';
import { useAddReading } from '../../../queries/firing-logs.ts';
import { InstrumentFields } from '../sheet/InstrumentFields.tsx';
import { keepInstrument, keptInstrument, readingBy } from '../sheet/instrument.ts';

const LEAST = -50;
const MOST = 1800;

/** One more reading by hand. */
export function AddReading({ study, firing }: { readonly study: string; readonly firing: string }) {
  const add = useAddReading(study, firing);
  const [{ shown, minute, where }, setTyped] = useState({ shown: '', minute: '', where: '' });
  const [instrument, setInstrument] = useState(keptInstrument);
  const [figure, at] = [readNumber(shown), minute.trim() ? readNumber(minute) : null];
  const wrong =
    shown.trim() && (figure === null || figure < LEAST || figure > MOST)
      ? `A figure from ${LEAST} to ${MOST} °C is needed.`
      : null;
  const wrongMinute = minute.trim() && (at === null || at < 0) ? 'Minutes, 0 or more.' : null;
  const ready = figure !== null && !wrong && !wrongMinute;
  const put = () => {
    if (!ready) return;
    const reading = { at: at === null ? null : 60 * at, where, reading: readingBy(instrument, figure) };
    add.mutate(reading, { onSuccess: () => setTyped({ shown: '', minute: '', where }) });
  };
  return (
    <form
      className="stack tight"
      aria-label="One more reading"
      onSubmit={(event) => {
        event.preventDefault();
        put();
      }}
    >
      <div className="fields">
        <Field
          label="Shown (°C)"
          inputMode="decimal"
          value={shown}
          wrong={wrong}
          onChange={(next) => setTyped({ shown: next, minute, where })}
        />
        <Field
          label="Minutes since lighting"
          inputMode="numeric"
          value={minute}
          wrong={wrongMinute}
          onChange={(next) => setTyped({ shown, minute: next, where })}
        />
        <Field
          label="Where in the fire"
          value={where}
          maxLength={120}
          onChange={(next) => setTyped({ shown, minute, where: next })}
        />
        <InstrumentFields
          instrument={instrument}
          onChange={(next) => {
            setInstrument(next);
            keepInstrument(next);
          }}
        />
      </div>
      <ErrorNotice error={add.error} />
      <div>
        <Button type="submit" isPending={add.isPending} isDisabled={!ready}>
          Add the reading
        </Button>
      </div>
    </form>
  );
}
