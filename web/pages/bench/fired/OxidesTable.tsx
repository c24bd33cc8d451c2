import type { FiredOxide } from '../../../../api/domain/batch/fired-oxides.ts';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { grams, Range } from '../parts/Range.tsx';

/** Two decimals: weighing is finer than what sulfur, purity and roast leave open. */
function Percent({ row }: { readonly row: FiredOxide }) {
  const sigma = row.sigma < 0.005 ? '< 0.01' : row.sigma.toFixed(2);
  return (
    <span className="number">
      {row.percent.toFixed(2)} <span className="faint">± {sigma}</span>
    </span>
  );
}

const COLUMNS: readonly Column<FiredOxide>[] = [
  { id: 'oxide', label: 'Oxide', header: true, cell: (row) => showAnalyte(row.oxide) },
  {
    id: 'percent',
    label: 'wt%',
    numeric: true,
    cell: (row) => <Percent row={row} />,
  },
  { id: 'range', label: 'Range, wt%', numeric: true, cell: (row) => <Range span={row} /> },
  { id: 'moles', label: 'mole %', numeric: true, cell: (row) => row.molePercent.toFixed(2) },
  { id: 'grams', label: 'g', numeric: true, cell: (row) => grams(row.grams) },
];

export function OxidesTable({ oxides }: { readonly oxides: readonly FiredOxide[] }) {
  return <DataTable snug label="Fired paint" columns={COLUMNS} rows={oxides} rowKey={(row) => row.oxide} />;
}
