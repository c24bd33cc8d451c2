import type { ClipboardEvent } from 'react';
import { UNCERTAINTY_BASES, UNITS } from '../../../api/domain/composition/types.ts';
import { Button } from '../../parts/Button.tsx';
import { ScrollRegion } from '../../parts/ScrollRegion.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { blankRow, pastedRows, type ValueRow } from './reported-form.ts';

interface ValuesGridProps {
  readonly rows: readonly ValueRow[];
  readonly onChange: (rows: readonly ValueRow[]) => void;
  readonly wrong: ReadonlyMap<number, string>;
  readonly analytes: readonly string[];
}

const nextKey = (rows: readonly ValueRow[]) => Math.max(-1, ...rows.map((row) => row.key)) + 1;

/** The figures of an analysis, typed in or pasted from a spreadsheet. */
export function ValuesGrid({ rows, onChange, wrong, analytes }: ValuesGridProps) {
  const change = (next: ValueRow) => onChange(rows.map((row) => (row.key === next.key ? next : row)));
  const paste = (row: ValueRow, event: ClipboardEvent) => {
    const text = event.clipboardData.getData('text');
    if (!/[\t\n]/.test(text.trim())) return;
    event.preventDefault();
    const at = rows.indexOf(row);
    const pasted = pastedRows(text, row, nextKey(rows));
    onChange([...rows.slice(0, at), ...pasted, ...rows.slice(at + 1)]);
  };
  return (
    <div className="stack">
      <datalist id="analytes">
        {analytes.map((analyte) => (
          <option key={analyte} value={analyte} />
        ))}
      </datalist>
      <ScrollRegion label="Values as reported" className="cards entry">
        <table>
          <caption className="unseen">Values as reported</caption>
          <thead>
            <tr>
              <th scope="col">Analyte</th>
              <th scope="col">Value</th>
              <th scope="col">Unit</th>
              <th scope="col">±</th>
              <th scope="col">± means</th>
              <th scope="col">Below detection</th>
              <th scope="col">Limit</th>
              <th scope="col">
                <span className="unseen">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row, i) => (
              <GridRow
                key={row.key}
                row={row}
                place={i + 1}
                wrong={wrong.get(row.key)}
                onChange={change}
                onPaste={(event) => paste(row, event)}
                onRemove={() => onChange(rows.filter((one) => one !== row))}
              />
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <div className="row">
        <Button onPress={() => onChange([...rows, blankRow(nextKey(rows), rows.at(-1))])}>Add a line</Button>
        <span className="faint small">
          Several lines copied from a spreadsheet can be pasted into an analyte cell. Write &lt;0.01 for below
          0.01.
        </span>
      </div>
    </div>
  );
}

interface GridRowProps {
  readonly row: ValueRow;
  readonly place: number;
  readonly wrong: string | undefined;
  readonly onChange: (row: ValueRow) => void;
  readonly onPaste: (event: ClipboardEvent) => void;
  readonly onRemove: () => void;
}

function GridRow({ row, place, wrong, onChange, onPaste, onRemove }: GridRowProps) {
  const name = row.analyte || `line ${place}`;
  const text = (key: 'analyte' | 'value' | 'uncertainty' | 'limit', label: string) => ({
    className: 'input',
    value: row[key],
    'aria-label': `${label}, ${key === 'analyte' ? `line ${place}` : name}`,
    'aria-invalid': wrong ? true : undefined,
    onChange: (event: { target: { value: string } }) => onChange({ ...row, [key]: event.target.value }),
    ...(wrong ? { 'aria-describedby': `wrong-${row.key}` } : {}),
  });
  return (
    <tr className={wrong ? 'off' : undefined}>
      <td data-label="Analyte">
        <input {...text('analyte', 'Analyte')} list="analytes" autoComplete="off" onPaste={onPaste} />
        {wrong && (
          <span className="wrong" id={`wrong-${row.key}`}>
            {wrong}
          </span>
        )}
      </td>
      <td data-label="Value">
        <input {...text('value', 'Value')} inputMode="text" />
      </td>
      <td data-label="Unit">
        <Native
          label={`Unit, ${name}`}
          options={UNITS}
          value={row.unit}
          onChange={(unit) => onChange({ ...row, unit })}
        />
      </td>
      <td data-label="±">
        <input {...text('uncertainty', 'Plus or minus')} inputMode="decimal" />
      </td>
      <td data-label="± means">
        <Native
          label={`What ± means, ${name}`}
          options={UNCERTAINTY_BASES}
          value={row.basis}
          onChange={(basis) => onChange({ ...row, basis })}
        />
      </td>
      <td data-label="Below detection">
        <Tick
          aria-label={`Below detection, ${name}`}
          isSelected={row.below}
          onChange={(below) => onChange({ ...row, below })}
        />
      </td>
      <td data-label="Limit">
        <input {...text('limit', 'Detection limit')} inputMode="decimal" />
      </td>
      <td>
        <Button look="danger quiet" aria-label={`Remove ${name}`} onPress={onRemove}>
          Remove
        </Button>
      </td>
    </tr>
  );
}

/** A plain select: small, and at home in a grid and on a phone. */
function Native<Option extends string>(at: {
  readonly label: string;
  readonly options: readonly Option[];
  readonly value: Option;
  readonly onChange: (option: Option) => void;
}) {
  return (
    <select
      className="input"
      aria-label={at.label}
      value={at.value}
      onChange={(event) => at.onChange(event.target.value as Option)}
    >
      {at.options.map((option) => (
        <option key={option}>{option}</option>
      ))}
    </select>
  );
}
