import { useState } from 'react';
import { fireOfEntry, linesOfEntries } from '../../../../api/domain/batch/bench-shelf.ts';
import { type AmountOf, scaleBatch } from '../../../../api/domain/batch/scale.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { readNumber } from '../../../parts/numbers.ts';
import { Select } from '../../../parts/Select.tsx';
import { attempt } from '../parts/attempt.ts';
import { isBlank, type LineRow } from '../parts/lines-form.ts';
import type { Bench } from '../parts/WithShelf.tsx';
import type { BatchForm, ReadBatch } from './batch-form.ts';

export const AMOUNTS_OF = [
  { id: 'weighed', label: 'as weighed' },
  { id: 'dry', label: 'dry' },
  { id: 'fired', label: 'fired paint' },
] as const;

/** Brings a batch to a wanted amount of weighed, dry or fired paint; shares stay as they are. */
export function ScaleTo(at: {
  readonly form: BatchForm;
  readonly read: ReadBatch;
  readonly bench: Bench;
  readonly ready: boolean;
  readonly onScaled: (rows: readonly LineRow[]) => void;
}) {
  const [grams, setGrams] = useState('');
  const [of, setOf] = useState<AmountOf>('fired');
  const [wrong, setWrong] = useState<string | null>(null);
  const scale = () => {
    const wanted = readNumber(grams);
    if (wanted === null) return setWrong('A number of grams is needed.');
    const lines = linesOfEntries(at.read.lines, at.bench.shelf);
    const scaled = attempt(() => scaleBatch(lines, { grams: wanted, of }, fireOfEntry(at.read.fire)));
    setWrong(scaled.reason);
    if (scaled.value === null) return;
    const amounts = scaled.value.map((line) => String(Number(line.amount.toPrecision(6))));
    const filled = at.form.rows.filter((row) => !isBlank(row));
    at.onScaled(filled.map((row, i) => ({ ...row, amount: amounts[i] ?? row.amount })));
  };
  return (
    <div className="row base scale-to">
      <Field
        label="Scale to (g)"
        inputMode="decimal"
        value={grams}
        onChange={setGrams}
        wrong={wrong}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          event.preventDefault();
          scale();
        }}
      />
      <Select label="of it" choices={AMOUNTS_OF} value={of} onChange={setOf} />
      <Button onPress={scale} isDisabled={!at.ready}>
        Scale
      </Button>
    </div>
  );
}
