import type { Contribution, GroupPlacement } from '../../../../api/domain/placement/types.ts';
import { howFarOff } from '../../../../api/figures/profile-layout.ts';
import { showAnalyte } from '../../../parts/numbers.ts';
import { percent, showNumber } from '../words.ts';
import { column, DownloadableTable, type TableColumn } from './DownloadableTable.tsx';

const right = { numeric: true } as const;
const COLUMNS: TableColumn<Contribution>[] = [
  column('oxide', 'Oxide', (row) => row.oxide, { header: true, cell: (row) => showAnalyte(row.oxide) }),
  column('measured', 'Here, wt%', (row) => row.measured, {
    ...right,
    cell: (row) => showNumber(row.measured),
  }),
  column('centre', 'Group’s centre, wt%', (row) => row.centre, {
    ...right,
    cell: (row) => showNumber(row.centre),
  }),
  column('factor', 'Off by', (row) => row.factor, { ...right, cell: (row) => howFarOff(row.factor) }),
  column('share', 'Share of the distance', (row) => row.share, {
    ...right,
    cell: (row) => percent(row.share),
  }),
  column('d2', 'Part of D²', (row) => row.d2, { ...right, cell: (row) => showNumber(row.d2) ?? '–' }),
  column('z', 'Standard deviations', (row) => row.z, { ...right, cell: (row) => showNumber(row.z) ?? '–' }),
];

/** Which oxides make up the distance to one group, the largest first. */
export function ContributionsTable({
  label,
  group,
}: {
  readonly label: string;
  readonly group: GroupPlacement;
}) {
  return (
    <DownloadableTable
      label={`Oxides of ${label} against ${group.name}`}
      file={`${label} oxides against ${group.name}`}
      columns={COLUMNS}
      rows={[...group.contributions].sort((one, other) => other.share - one.share)}
      rowKey={(row) => row.oxide}
    />
  );
}
