import type { ReferenceModel } from '../../../../api/domain/reference/types.ts';
import { numeral } from '../../../../api/figures/text.ts';
import { showAnalyte } from '../../../parts/numbers.ts';
import { percent } from '../words.ts';
import { column, DownloadableTable, type TableColumn } from './DownloadableTable.tsx';

interface Row {
  readonly name: string;
  readonly values: readonly number[];
  readonly show: (value: number) => string;
}

/** Loadings of every oxide on every component, and how much of the variance each component holds. */
export function LoadingsTable({ model }: { readonly model: ReferenceModel }) {
  const { loadings, explained, eigenvalues } = model.pca;
  const three = (value: number) => numeral(value, 3);
  const rows: Row[] = [
    { name: 'Share of variance', values: explained, show: percent },
    { name: 'Eigenvalue', values: eigenvalues, show: three },
    ...model.parts.map((oxide, part) => ({
      name: oxide,
      values: loadings.map((one) => one[part]!),
      show: three,
    })),
  ];
  const columns: TableColumn<Row>[] = [
    column('name', 'Oxide', (row) => row.name, { header: true, cell: (row) => showAnalyte(row.name) }),
    ...explained.map((_, k) =>
      column<Row>(`PC${k + 1}`, `PC${k + 1}`, (row) => row.values[k] ?? null, {
        numeric: true,
        cell: (row) => row.show(row.values[k]!),
      }),
    ),
  ];
  return (
    <DownloadableTable
      label="Loadings and explained variance"
      file="loadings"
      columns={columns}
      rows={rows}
      rowKey={(row) => row.name}
      cards={false}
    />
  );
}
