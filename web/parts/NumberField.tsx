import { useState } from 'react';
import { Field, type FieldProps } from './Field.tsx';
import { readNumber } from './numbers.ts';

export interface NumberFieldProps
  extends Omit<FieldProps, 'value' | 'onChange' | 'wrong' | 'whole' | 'lines'> {
  readonly value: number | null;
  /** Told when the reader leaves the field, and only of figures that fit; null for an emptied field. */
  readonly onChange: (value: number | null) => void;
  readonly min?: number;
  readonly max?: number;
  /** Whole numbers only. */
  readonly whole?: boolean;
  readonly unit?: string;
}

/** What is wrong with a typed number, in plain words; null when nothing is. */
export function faultOf(
  text: string,
  limits: Pick<NumberFieldProps, 'min' | 'max' | 'whole'>,
): string | null {
  if (!text.trim()) return null;
  const value = readNumber(text);
  if (value === null) return `“${text.trim()}” is no number.`;
  if (limits.whole && !Number.isInteger(value)) return 'A whole number is needed.';
  if (limits.min !== undefined && value < limits.min) return `${limits.min} is the least.`;
  if (limits.max !== undefined && value > limits.max) return `${limits.max} is the most.`;
  return null;
}

/** A number typed as people write it, with a decimal point or comma. */
export function NumberField({ value, onChange, min, max, whole, unit, label, ...rest }: NumberFieldProps) {
  const [typing, setTyping] = useState<string | null>(null);
  const text = typing ?? (value === null ? '' : String(value));
  const limits = {
    ...(min === undefined ? {} : { min }),
    ...(max === undefined ? {} : { max }),
    ...(whole ? { whole } : {}),
  };
  const wrong = faultOf(text, limits);
  const settle = () => {
    if (typing === null || wrong) return;
    setTyping(null);
    const next = typing.trim() ? readNumber(typing) : null;
    if (next !== value) onChange(next);
  };
  return (
    <Field
      {...rest}
      label={unit ? `${label} (${unit})` : label}
      value={text}
      onChange={setTyping}
      onBlur={settle}
      onKeyDown={(event) => event.key === 'Enter' && settle()}
      inputMode={whole ? 'numeric' : 'decimal'}
      wrong={wrong}
    />
  );
}
