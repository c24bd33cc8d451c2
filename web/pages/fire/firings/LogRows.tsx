import type { LogPreview } from '../../../../api/contract/firing-log.ts';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';

interface Row {
  readonly number: number;
  readonly cells: readonly string[];
}

/** The first rows as they stand in the file. */
export function LogRows({ preview }: { readonly preview: LogPreview }) {
  const { sample, headings, firstRow } = preview;
  const width = Math.max(...sample.map((cells) => cells.length));
  const rows = sample.map((cells, i): Row => ({ number: firstRow + i, cells }));
  const columns: Column<Row>[] = [
    { id: 'row', label: 'Row', header: true, cell: (row) => row.number },
    ...Array.from({ length: width }, (_, i) => ({
      id: String(i),
      label: headings[i] || `Column ${i + 1}`,
      cell: (row: Row) => row.cells[i] ?? '',
    })),
  ];
  return (
    <details>
      <summary>First rows as they stand in the file</summary>
      <DataTable
        label="First rows of the log"
        columns={columns}
        rows={rows}
        rowKey={(row) => String(row.number)}
        cards={false}
        snug
      />
    </details>
  );
}
