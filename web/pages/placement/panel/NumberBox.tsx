import { useState } from 'react';
import { Field } from '../../../parts/Field.tsx';
import { readNumber, showPlain } from '../../../parts/numbers.ts';

/** A number typed in, taken over when the reader is done with it; `null` where the box may be empty. */
export function NumberBox(at: {
  readonly label: string;
  readonly hint?: string;
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  /** What is wrong with a number, in plain words; null when it will do. */
  readonly fault: (value: number) => string | null;
  readonly optional?: boolean;
}) {
  const shown = at.value === null ? '' : showPlain(at.value);
  const [text, setText] = useState<string | null>(null);
  const typed = text ?? shown;
  const value = readNumber(typed);
  const wrong =
    typed.trim() === ''
      ? at.optional
        ? null
        : 'needs a number'
      : value === null
        ? 'is not a number'
        : at.fault(value);
  const done = () => {
    if (wrong !== null || text === null) return;
    setText(null);
    at.onChange(value);
  };
  return (
    <Field
      label={at.label}
      hint={at.hint}
      value={typed}
      onChange={setText}
      onBlur={done}
      onKeyDown={(event) => event.key === 'Enter' && done()}
      wrong={wrong}
      inputMode="decimal"
    />
  );
}
