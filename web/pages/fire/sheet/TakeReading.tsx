import { useState } from 'react';
import type { FiringRecord, TakenReading } from '../../../../api/contract/firing.ts';
import type { Sensor } from '../../../../api/domain/firing/types.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { Select } from '../../../parts/Select.tsx';
import type { Note } from './waiting.ts';

const INSTRUMENTS = [
  { id: 'K1', label: 'Thermocouple type K, class 1' },
  { id: 'K2', label: 'Thermocouple type K, class 2' },
  { id: 'N2', label: 'Thermocouple type N, class 2' },
  { id: 'unknown', label: 'Thermocouple, class not known' },
] as const;
type Instrument = (typeof INSTRUMENTS)[number]['id'];
const SENSORS: Readonly<Record<Instrument, Sensor>> = {
  K1: { kind: 'class', type: 'K', class: 1 },
  K2: { kind: 'class', type: 'K', class: 2 },
  N2: { kind: 'class', type: 'N', class: 2 },
  unknown: { kind: 'unknown' },
};

interface TakeReadingProps {
  readonly study: string;
  readonly firing: FiringRecord;
  readonly onNote: (note: Note) => void;
}

/** A temperature read by hand, with what it was read by. */
export function TakeReading({ study, firing, onNote }: TakeReadingProps) {
  const [celsius, setCelsius] = useState<number | null>(null);
  const [minutes, setMinutes] = useState<number | null>(null);
  const [where, setWhere] = useState('');
  const [instrument, setInstrument] = useState<Instrument>('K2');
  const take = () => {
    if (celsius === null) return;
    const reading: TakenReading = {
      at: minutes === null ? null : 60 * minutes,
      where,
      reading: { kind: 'thermocouple', celsius, resolution: 1, sensor: SENSORS[instrument] },
    };
    onNote({ kind: 'reading', study, firing: firing.id, reading, words: `${celsius} °C` });
    setCelsius(null);
  };
  return (
    <section className="stack" aria-labelledby="reading">
      <h2 id="reading">A reading by hand</h2>
      <NumberField
        label="Temperature"
        unit="°C"
        {...{ min: -50, max: 1800 }}
        value={celsius}
        onChange={setCelsius}
      />
      <NumberField
        label="Since the fire was lit"
        unit="min"
        {...{ min: 0, max: 80_000 }}
        value={minutes}
        onChange={setMinutes}
      />
      <Field label="Where in the fire" value={where} onChange={setWhere} />
      <Select label="Read by" choices={INSTRUMENTS} value={instrument} onChange={setInstrument} />
      <div className="big-choice">
        <Button look="primary" isDisabled={celsius === null} onPress={take}>
          Note it
        </Button>
      </div>
    </section>
  );
}
