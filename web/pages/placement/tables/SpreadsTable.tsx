import type { GroupModel, ReferenceModel } from '../../../../api/domain/reference/types.ts';
import { showNumber } from '../words.ts';
import { column, DownloadableTable, type TableColumn } from './DownloadableTable.tsx';

const right = { numeric: true } as const;
const COLUMNS: TableColumn<GroupModel>[] = [
  column('name', 'Ware group', (row) => row.name, { header: true }),
  column('n', 'Sherds n', (row) => row.n, right),
  column('p', 'Directions p', (row) => row.spread?.p ?? null, {
    ...right,
    cell: (row) => row.spread?.p ?? '–',
  }),
  column('limit', 'D² of the 5 % limit', (row) => row.spread?.limit ?? null, {
    ...right,
    cell: (row) => showNumber(row.spread?.limit ?? null) ?? '–',
  }),
  column('shrinkage', 'Shrinkage', (row) => row.spread?.shrinkage ?? null, {
    ...right,
    cell: (row) => showNumber(row.spread?.shrinkage ?? null) ?? '–',
  }),
  column('why', 'How and why', (row) => row.spread?.explanation ?? row.refusal ?? ''),
];

/** Which covariance each group got, and why. */
export function SpreadsTable({ model }: { readonly model: ReferenceModel }) {
  return (
    <DownloadableTable
      label="How each group’s spread was measured"
      file="spreads"
      columns={COLUMNS}
      rows={model.groups}
      rowKey={(row) => row.id}
    />
  );
}
