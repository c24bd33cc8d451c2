import { Button } from '../../../parts/Button.tsx';
import { ScrollRegion } from '../../../parts/ScrollRegion.tsx';
import { blankLine, type LineRow, nextKey } from './lines-form.ts';
import { MaterialPick } from './MaterialPick.tsx';
import type { Bench } from './WithShelf.tsx';

export interface LinesEditorProps {
  readonly label: string;
  readonly bench: Bench;
  readonly rows: readonly LineRow[];
  readonly onChange: (rows: readonly LineRow[]) => void;
  readonly wrong: ReadonlyMap<number, string>;
  readonly unit: 'g' | 'parts';
  /** A roast that must not hold itself. */
  readonly without?: string | undefined;
}

/** What is weighed: a material, how much, and how wet. */
export function LinesEditor({ label, bench, rows, onChange, wrong, unit, without }: LinesEditorProps) {
  const change = (next: LineRow) => onChange(rows.map((row) => (row.key === next.key ? next : row)));
  return (
    <div className="stack">
      <ScrollRegion label={label} className="cards entry lines-entry">
        <table>
          <caption className="unseen">{label}</caption>
          <thead>
            <tr>
              <th scope="col">Material</th>
              <th scope="col">{unit === 'g' ? 'Weighed, g' : 'Parts by mass'}</th>
              <th scope="col">Water in it, wt%</th>
              <th scope="col">
                <span className="unseen">Remove</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row, place) => (
              <Line
                key={row.key}
                bench={bench}
                without={without}
                row={row}
                place={place + 1}
                unit={unit}
                wrong={wrong.get(row.key)}
                onChange={change}
                onRemove={() => onChange(rows.filter((one) => one.key !== row.key))}
              />
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <div>
        <Button onPress={() => onChange([...rows, blankLine(nextKey(rows))])}>Add a line</Button>
      </div>
    </div>
  );
}

interface LineProps {
  readonly bench: Bench;
  readonly without: string | undefined;
  readonly row: LineRow;
  readonly place: number;
  readonly unit: 'g' | 'parts';
  readonly wrong: string | undefined;
  readonly onChange: (row: LineRow) => void;
  readonly onRemove: () => void;
}

function Line({ bench, without, row, place, unit, wrong, onChange, onRemove }: LineProps) {
  const name = bench.shelf.materials.get(row.material)?.name ?? `line ${place}`;
  const about = wrong ? { 'aria-invalid': true, 'aria-describedby': `line-wrong-${row.key}` } : {};
  return (
    <tr className={wrong ? 'off' : undefined}>
      <td data-label="Material">
        <MaterialPick
          label={`Material, line ${place}`}
          bench={bench}
          without={without}
          value={row.material}
          onChange={(material) => onChange({ ...row, material })}
        />
        {wrong && (
          <span className="wrong" id={`line-wrong-${row.key}`}>
            {wrong}
          </span>
        )}
      </td>
      <td data-label={unit === 'g' ? 'Weighed, g' : 'Parts by mass'}>
        <input
          {...about}
          className="input"
          inputMode="decimal"
          autoComplete="off"
          aria-label={`Amount, ${name}`}
          value={row.amount}
          onChange={(event) => onChange({ ...row, amount: event.target.value })}
        />
      </td>
      <td data-label="Water in it, wt%">
        <input
          {...about}
          className="input"
          inputMode="decimal"
          autoComplete="off"
          placeholder="0"
          aria-label={`Water, ${name}`}
          value={row.water}
          onChange={(event) => onChange({ ...row, water: event.target.value })}
        />
      </td>
      <td>
        <Button look="danger quiet" aria-label={`Remove ${name}`} onPress={onRemove}>
          Remove
        </Button>
      </td>
    </tr>
  );
}
