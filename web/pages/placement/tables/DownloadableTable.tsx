import { CsvDownload } from '../../../parts/CsvDownload.tsx';
import type { Cell } from '../../../parts/csv.ts';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';

/** A column that is read on the page and, at full precision, in the file. */
export interface TableColumn<Row> extends Column<Row> {
  readonly value: (row: Row) => Cell;
}
/** A column of plain text or numbers, shown as it is or by `show`. */
export function column<Row>(
  id: string,
  label: string,
  value: (row: Row) => Cell,
  look: Partial<TableColumn<Row>> = {},
): TableColumn<Row> {
  return { id, label, value, cell: (row) => value(row), ...look };
}

export function DownloadableTable<Row>(at: {
  readonly label: string;
  /** Name of the file, without its ending. */
  readonly file: string;
  readonly columns: readonly TableColumn<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  readonly cards?: boolean;
  /** Columns of the file, where they are more than the page shows. */
  readonly fileColumns?: readonly TableColumn<Row>[];
}) {
  const { label, columns, rows, rowKey, cards } = at;
  const inFile = at.fileColumns ?? columns;
  return (
    <div className="stack tight">
      <DataTable
        label={label}
        columns={columns}
        rows={rows}
        rowKey={rowKey}
        {...(cards === false ? { cards } : {})}
      />
      <div>
        <CsvDownload
          name={at.file}
          header={inFile.map((one) => one.label)}
          rows={() => rows.map((row) => inFile.map((one) => one.value(row)))}
        />
      </div>
    </div>
  );
}
