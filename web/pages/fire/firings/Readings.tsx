import { useState } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { hoursMinutes } from '../../../../api/domain/firing/stages.ts';
import { Button } from '../../../parts/Button.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { readNumber } from '../../../parts/numbers.ts';
import { useAddReading } from '../../../queries/firing-logs.ts';
import { InstrumentFields } from '../sheet/InstrumentFields.tsx';
import { keepInstrument, keptInstrument, readingBy } from '../sheet/instrument.ts';
import { celsius } from './words.ts';

type Reading = FiringRecord['readings'][number];
const LEAST = -50;
const MOST = 1800;

/** Readings by hand with what their instrument's error leaves open, and one more. */
export function Readings({ study, firing }: { readonly study: string; readonly firing: FiringRecord }) {
  const rows = firing.readings
    .map((reading, i) => ({ ...reading, key: String(i) }))
    .sort((a, b) => (a.at ?? Number.POSITIVE_INFINITY) - (b.at ?? Number.POSITIVE_INFINITY) || 0);
  return (
    <section className="sheet stack" aria-labelledby="readings">
      <h2 id="readings">Readings by hand</h2>
      {rows.length === 0 ? (
        <p className="faint">None yet. They can be noted on the phone at the fire, or here.</p>
      ) : (
        <DataTable
          label="Readings by hand"
          cards={false}
          columns={COLUMNS}
          rows={rows}
          rowKey={(row) => row.key}
          snug
        />
      )}
      <AddReading study={study} firing={firing.id} />
    </section>
  );
}

const COLUMNS: readonly Column<Reading>[] = [
  {
    id: 'at',
    label: 'At',
    header: true,
    cell: (r) => (r.at === null ? 'no time' : `${hoursMinutes(r.at)} h`),
  },
  { id: 'shown', label: 'Shown', cell: (r) => `${r.reading.celsius} °C` },
  { id: 'was', label: 'May have been', prose: true, cell: (r) => (r.bounds ? celsius(r.bounds) : r.reason) },
  { id: 'where', label: 'Where', cell: (r) => r.where },
  { id: 'by', label: 'Read by', cell: (r) => (r.reading.kind === 'infrared' ? 'infrared' : 'thermocouple') },
];

function AddReading({ study, firing }: { readonly study: string; readonly firing: string }) {
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
