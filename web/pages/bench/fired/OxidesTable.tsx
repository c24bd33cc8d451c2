import type { FiredOxide } from '../../../../api/domain/batch/fired-oxides.ts';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { NumberWithUnit } from '../../../parts/NumberWithUnit.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { grams, Range } from '../parts/Range.tsx';

const COLUMNS: readonly Column<FiredOxide>[] = [
  { id: 'oxide', label: 'Oxide', header: true, cell: (row) => showAnalyte(row.oxide) },
  {
    id: 'percent',
    label: 'wt%',
    numeric: true,
    cell: (row) => <NumberWithUnit value={row.percent} uncertainty={row.sigma > 5e-4 ? row.sigma : null} />,
  },
  { id: 'range', label: 'Range, wt%', numeric: true, cell: (row) => <Range span={row} /> },
  { id: 'moles', label: 'mole %', numeric: true, cell: (row) => row.molePercent.toFixed(2) },
  { id: 'grams', label: 'g', numeric: true, cell: (row) => grams(row.grams) },
];

export function OxidesTable({ oxides }: { readonly oxides: readonly FiredOxide[] }) {
  return <DataTable snug label="Fired paint" columns={COLUMNS} rows={oxides} rowKey={(row) => row.oxide} />;
}
