import type { ReactNode } from 'react';
import { SortArrows } from './icons.tsx';
import { ScrollRegion } from './ScrollRegion.tsx';

export interface Column<Row> {
  readonly id: string;
  readonly label: string;
  readonly cell: (row: Row) => ReactNode;
  readonly numeric?: boolean;
  readonly sortable?: boolean;
  /** This column names the row. */
  readonly header?: boolean;
  /** Holds sentences: on a card they stand under their label, not beside it. */
  readonly prose?: boolean;
  /** The label is for screen readers only. */
  readonly hideLabel?: boolean;
}
export interface Sort {
  readonly column: string;
  readonly direction: 'asc' | 'desc';
}
export interface DataTableProps<Row> {
  /** What the table holds, for screen readers and for the scrolling region. */
  readonly label: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  readonly sort?: Sort;
  readonly onSort?: (sort: Sort) => void;
  /** On a phone each row becomes a card; false lets a wide table of figures scroll instead. */
  readonly cards?: boolean;
  /** As narrow as its content allows: for a few columns of figures. */
  readonly snug?: boolean;
}

const ARIA = { asc: 'ascending', desc: 'descending' } as const;

/** A plain table: sort buttons in its header, cards on a phone. */
export function DataTable<Row>(at: DataTableProps<Row>) {
  const className = [at.cards !== false && 'cards', at.snug && 'snug'].filter(Boolean).join(' ');
  return (
    <ScrollRegion label={at.label} className={className}>
      <table>
        <caption className="unseen">{at.label}</caption>
        <thead>
          <tr>
            {at.columns.map((column) => (
              <HeaderCell key={column.id} column={column} sort={at.sort} onSort={at.onSort} />
            ))}
          </tr>
        </thead>
        <tbody>
          {at.rows.map((row) => (
            <tr key={at.rowKey(row)}>
              {at.columns.map((column) => (
                <BodyCell key={column.id} column={column} row={row} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function HeaderCell<Row>(at: {
  readonly column: Column<Row>;
  readonly sort: Sort | undefined;
  readonly onSort: ((sort: Sort) => void) | undefined;
}) {
  const { column, sort, onSort } = at;
  const className = column.numeric ? 'numeric' : undefined;
  if (!column.sortable || !onSort)
    return (
      <th scope="col" className={className}>
        {column.hideLabel ? <span className="unseen">{column.label}</span> : column.label}
      </th>
    );
  const current = sort?.column === column.id ? sort.direction : null;
  const next = current === 'asc' ? 'desc' : 'asc';
  return (
    <th scope="col" className={className} aria-sort={current ? ARIA[current] : 'none'}>
      <button type="button" className="sort" onClick={() => onSort({ column: column.id, direction: next })}>
        {column.label}
        <SortArrows />
      </button>
    </th>
  );
}

function BodyCell<Row>({ column, row }: { readonly column: Column<Row>; readonly row: Row }) {
  const content = column.cell(row);
  if (column.header) return <th scope="row">{content}</th>;
  const blank = content === null || content === '';
  const className = [column.numeric && 'numeric', column.prose && 'prose', blank && 'blank']
    .filter(Boolean)
    .join(' ');
  return (
    <td className={className || undefined} data-label={column.hideLabel ? undefined : column.label}>
      {content}
    </td>
  );
}
