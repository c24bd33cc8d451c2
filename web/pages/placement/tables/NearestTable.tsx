import { Link } from 'wouter';
import type { NearSherd, Placement } from '../../../../api/domain/placement/types.ts';
import { specimenPath } from '../../sherds/paths.ts';
import { showNumber } from '../words.ts';
import { column, DownloadableTable, type TableColumn } from './DownloadableTable.tsx';

/** The single sherds nearest to a replica, whatever group they are in. */
export function NearestTable(at: {
  readonly study: string | null;
  readonly placement: Placement;
  readonly nameOf: (group: string) => string;
}) {
  const columns: TableColumn<NearSherd>[] = [
    column('label', 'Sherd', (row) => row.label, {
      header: true,
      cell: (row) =>
        at.study === null ? (
          row.label
        ) : (
          <Link className="cell" href={specimenPath(at.study, row.id)}>
            {row.label}
          </Link>
        ),
    }),
    column('group', 'Ware group', (row) => at.nameOf(row.group)),
    column('distance', 'Distance', (row) => row.distance, {
      numeric: true,
      cell: (row) => showNumber(row.distance),
    }),
  ];
  return (
    <DownloadableTable
      label={`Sherds nearest to ${at.placement.label}`}
      file={`${at.placement.label} nearest sherds`}
      columns={columns}
      rows={at.placement.nearest}
      rowKey={(row) => row.id}
      cards={false}
    />
  );
}
