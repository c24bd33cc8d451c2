import { Field } from '../../../parts/Field.tsx';
import { Select } from '../../../parts/Select.tsx';
import { useBatches } from '../../../queries/bench.ts';
import { NumberBox } from '../panel/NumberBox.tsx';
import { type FiredChoice, readComposition } from './fired-choice.ts';

const TYPED = 'typed';

/** Chooses the batch whose fired composition a reading is set against. */
export function FiredTarget(at: {
  readonly study: string;
  readonly value: FiredChoice;
  readonly onChange: (value: FiredChoice) => void;
}) {
  const { value, onChange } = at;
  const batches = useBatches(at.study).data ?? [];
  const there = batches.some(({ id }) => id === value.batch);
  const wrong = value.typed.trim() !== '' && readComposition(value.typed) === null;
  return (
    <div className="stack">
      <div className="slip-choice">
        <Select
          label="Batch"
          choices={[
            { id: TYPED, label: 'Typed in', hint: 'Its fired composition' },
            ...batches.map(({ id, name }) => ({ id, label: name })),
          ]}
          value={there ? value.batch : TYPED}
          onChange={(id) => onChange({ ...value, batch: id === TYPED ? null : id })}
        />
      </div>
      {!there && (
        <div className="slip-share">
          <Field
            label="Fired composition"
            hint="Oxides with their parts by mass, such as PbO 60, SiO2 32, Al2O3 6"
            value={value.typed}
            onChange={(typed) => onChange({ ...value, batch: null, typed })}
            wrong={wrong ? 'needs oxides, each followed by its amount' : null}
            lines={2}
          />
          <NumberBox
            label="± of each oxide, %"
            hint="Relative; empty takes it as exact"
            value={value.relativeError}
            optional
            fault={(x) => (x > 0 && x <= 100 ? null : 'lies above 0 and up to 100')}
            onChange={(relativeError) => onChange({ ...value, relativeError })}
          />
        </div>
      )}
    </div>
  );
}
