import type { Preview } from '../../../api/contract/intake.ts';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { showAnalyte, showPlain, showValue } from '../../parts/numbers.ts';
import { measuredWord } from '../sherds/words.ts';

type Draft = Preview['analyses'][number];
type Value = Draft['values'][number];

function figure(one: Value): string {
  const limit = one.limit === null ? 'below detection' : `< ${showPlain(one.limit)} ${one.unit}`;
  const value = one.value === null ? limit : `${showValue(one.value, one)} ${one.unit}`;
  return `${showAnalyte(one.analyte)} ${value}`;
}

const COLUMNS: readonly Column<Draft>[] = [
  { id: 'specimen', label: 'Specimen', header: true, cell: (one) => one.specimen },
  { id: 'group', label: 'Ware group', cell: (one) => one.group ?? <span className="faint">none</span> },
  {
    id: 'measured',
    label: 'Measured',
    cell: (one) => [measuredWord(one.measured), one.spot].filter(Boolean).join(', '),
  },
  {
    id: 'values',
    label: 'Values',
    prose: true,
    cell: (one) => <span className="small">{one.values.map(figure).join('; ')}</span>,
  },
];

/** The first analyses as they would be stored. */
export function FirstAnalyses({
  analyses,
  of,
}: {
  readonly analyses: readonly Draft[];
  readonly of: number;
}) {
  if (analyses.length === 0) return null;
  return (
    <section className="stack" aria-labelledby="stored">
      <h2 id="stored">
        As they would be stored{of > analyses.length && `: the first ${analyses.length} of ${of}`}
      </h2>
      <DataTable
        label="As they would be stored"
        columns={COLUMNS}
        rows={analyses}
        rowKey={(one) => `${one.specimen} ${one.rows.join()}`}
      />
    </section>
  );
}
