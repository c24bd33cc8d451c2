import { useState } from 'react';
import { SettledField } from '../../parts/SettledField.tsx';
import { readRows, showRows } from './rows-text.ts';

/** Some rows of the file, by their numbers. */
export function RowsField(at: {
  readonly label: string;
  readonly hint: string;
  readonly rows: readonly number[];
  readonly onChange: (rows: number[]) => void;
}) {
  const [wrong, setWrong] = useState<string | null>(null);
  const settle = (text: string | null) => {
    const rows = readRows(text ?? '');
    setWrong(rows ? null : `“${text}” is no list of row numbers.`);
    if (rows) at.onChange(rows);
  };
  return (
    <SettledField label={at.label} hint={at.hint} value={showRows(at.rows)} wrong={wrong} onChange={settle} />
  );
}
