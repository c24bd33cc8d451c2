import type { AnalysedRef } from '../../../../api/contract/slip-reading.ts';
import { Field } from '../../../parts/Field.tsx';
import { readNumber } from '../../../parts/numbers.ts';
import { Select } from '../../../parts/Select.tsx';
import { useBatches } from '../../../queries/bench.ts';
import { NumberBox } from '../panel/NumberBox.tsx';

/** A fired batch as it is predicted: one of the study's, or typed in. */
export interface FiredChoice {
  readonly batch: string | null;
  readonly typed: string;
  readonly relativeError: number | null;
}
export const NO_TARGET: FiredChoice = { batch: null, typed: '', relativeError: null };
const TYPED = 'typed';

/** `PbO 60, SiO2 32` → amounts; null where a piece is no oxide with an amount. */
export function readComposition(text: string): Record<string, number> | null {
  const pieces = text.split(/[;\n]|,(?=\s*[A-Z])/).map((piece) => piece.trim());
  const found: Record<string, number> = {};
  for (const piece of pieces.filter((one) => one !== '')) {
    const [, oxide, amount] = /^([A-Z][A-Za-z0-9]*)\s*[:=\s]\s*(\S+)$/.exec(piece) ?? [];
    const value = amount === undefined ? null : readNumber(amount.replace(/%$/, ''));
    if (oxide === undefined || value === null || value < 0) return null;
    found[oxide] = value;
  }
  return Object.keys(found).length > 0 ? found : null;
}

/** As the service is asked; null until there is something to ask with. */
export function targetOf({ batch, typed, relativeError }: FiredChoice): AnalysedRef | null {
  if (batch !== null) return { kind: 'batch', batch };
  const oxides = readComposition(typed);
  if (oxides === null) return null;
  const error = relativeError === null ? null : relativeError / 100;
  return { kind: 'typed', label: 'the batch as typed', oxides, relativeError: error || null };
}

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
