import { useRef } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { hoursMinutes } from '../../../../api/domain/firing/stages.ts';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { useTakeOffReading } from '../../../queries/firing-logs.ts';
import { AddReading } from './AddReading.tsx';
import { celsius } from './words.ts';

type Reading = FiringRecord['readings'][number];

/** Readings by hand with what their instrument's error leaves open: one more, or one fewer. */
export function Readings({ study, firing }: { readonly study: string; readonly firing: FiringRecord }) {
  const takeOff = useTakeOffReading(study, firing.id);
  const heading = useRef<HTMLHeadingElement>(null);
  const rows = firing.readings.toSorted((a, b) => (a.at ?? Infinity) - (b.at ?? Infinity) || 0);
  // The button that had the focus goes with its row.
  const gone = () => setTimeout(() => heading.current?.focus());
  const off: Column<Reading> = {
    ...{ id: 'off', label: 'Take off', hideLabel: true },
    cell: (row) => (
      <ConfirmDelete
        label="Take off"
        name={inWords(row)}
        title={`Take off ${inWords(row)}?`}
        lost={<p>The reading will be lost; a phone that sends it again does not bring it back.</p>}
        confirm="Take it off"
        onDelete={() => takeOff.mutateAsync(row.id).finally(gone)}
      />
    ),
  };
  const refusedGone = rows.every((row) => row.id !== takeOff.variables);
  return (
    <section className="sheet stack" aria-labelledby="readings">
      <h2 id="readings" ref={heading} tabIndex={-1}>
        Readings by hand
      </h2>
      {rows.length === 0 ? (
        <p className="faint">None yet. They can be noted on the phone at the fire, or here.</p>
      ) : (
        <DataTable
          label="Readings by hand"
          columns={[...COLUMNS, off]}
          rows={rows}
          rowKey={(row) => row.id}
          snug
        />
      )}
      {refusedGone && <ErrorNotice error={takeOff.error} />}
      {rows.length > 0 && <p className="faint small">A wrong one is taken off, and added as it should be.</p>}
      <AddReading study={study} firing={firing.id} />
    </section>
  );
}

const timeOf = ({ at }: Reading) => (at === null ? 'no time' : `${hoursMinutes(at)} h`);
const inWords = (one: Reading) =>
  `${one.reading.celsius} °C${one.at === null ? ' without a time' : ` at ${timeOf(one)}`}${one.where && `, ${one.where}`}`;

const COLUMNS: readonly Column<Reading>[] = [
  { id: 'at', label: 'At', header: true, cell: timeOf },
  { id: 'shown', label: 'Shown', cell: (r) => `${r.reading.celsius} °C` },
  { id: 'was', label: 'May have been', prose: true, cell: (r) => (r.bounds ? celsius(r.bounds) : r.reason) },
  { id: 'where', label: 'Where', cell: (r) => r.where },
  { id: 'by', label: 'Read by', cell: (r) => (r.reading.kind === 'infrared' ? 'infrared' : 'thermocouple') },
];
