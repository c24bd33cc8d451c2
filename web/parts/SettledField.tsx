import { useState } from 'react';
import { Field, type FieldProps } from './Field.tsx';

/** A text told only when the reader leaves the field, for forms where every change costs an answer. */
export function SettledField(
  at: Omit<FieldProps, 'value' | 'onChange'> & {
    readonly value: string | null;
    readonly onChange: (text: string | null) => void;
  },
) {
  const { value, onChange, ...rest } = at;
  const [typing, setTyping] = useState<string | null>(null);
  const settle = () => {
    if (typing === null) return;
    const next = typing.trim() || null;
    setTyping(null);
    if (next !== value) onChange(next);
  };
  return <Field {...rest} value={typing ?? value ?? ''} onChange={setTyping} onBlur={settle} />;
}
