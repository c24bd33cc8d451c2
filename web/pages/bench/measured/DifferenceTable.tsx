import type { DifferenceRow, PredictionResult } from '../../../../api/domain/batch/prediction.ts';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { Tag } from '../../../parts/Notice.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';

const signed = (x: number) => `${x < -0.005 ? '\u2212' : x > 0.005 ? '+' : ''}${Math.abs(x).toFixed(2)}`;

function Part({ value, sigma }: { readonly value: number; readonly sigma: number }) {
  return (
    <span className="number">
      {signed(value)} {sigma > 0 && <span className="faint">± {sigma.toFixed(2)}</span>}
    </span>
  );
}

const COLUMNS: readonly Column<DifferenceRow>[] = [
  { id: 'oxide', label: 'Oxide', header: true, cell: (row) => showAnalyte(row.oxide) },
  { id: 'predicted', label: 'Predicted, wt%', numeric: true, cell: (row) => row.predicted.toFixed(2) },
  { id: 'measured', label: 'Measured, wt%', numeric: true, cell: (row) => row.measured.toFixed(2) },
  { id: 'difference', label: 'Difference', numeric: true, cell: (row) => signed(row.difference) },
  {
    id: 'slip',
    label: 'To slip',
    numeric: true,
    cell: (row) => <Part value={row.slip} sigma={row.sigma.slip} />,
  },
  {
    id: 'lead',
    label: 'To lead lost',
    numeric: true,
    cell: (row) => <Part value={row.evaporation} sigma={row.sigma.evaporation} />,
  },
  {
    id: 'rest',
    label: 'Unexplained',
    numeric: true,
    cell: (row) => <Part value={row.unexplained} sigma={row.sigma.unexplained} />,
  },
  {
    id: 'real',
    label: 'Beyond 2σ',
    cell: (row) => (row.z !== null && row.z > 2 ? <Tag kind="caution">yes</Tag> : ''),
  },
];

/** Difference = to slip + to lead lost + unexplained, oxide by oxide. */
export function DifferenceTable({ split }: { readonly split: PredictionResult }) {
  return (
    <section className="stack" aria-labelledby="difference">
      <h2 id="difference">Oxide by oxide</h2>
      <DataTable
        label="Predicted and measured"
        columns={COLUMNS}
        rows={split.rows}
        rowKey={(row) => row.oxide}
      />
      <p className="faint small">
        wt% closed over the oxides measured; what no material of the batch is known to hold counts as none; ±
        is one standard deviation. The prediction’s ± takes the range that sulfur, purity and roast leave open
        as even between its ends.
        {split.leftOut.length > 0 &&
          ` Left out, because they were not measured: ${split.leftOut.map(showAnalyte).join(', ')}.`}
      </p>
    </section>
  );
}
