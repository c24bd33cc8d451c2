import type { Comparison } from '../../../../api/contract/placement.ts';
import type { GroupPlacement, Placement } from '../../../../api/domain/placement/types.ts';
import type { Member, ReferenceModel } from '../../../../api/domain/reference/types.ts';
import { showAnalyte, showSignificant } from '../../../parts/numbers.ts';
import { GroupMark } from '../../placement/GroupMark.tsx';
import { column, DownloadableTable, type TableColumn } from '../../placement/tables/DownloadableTable.tsx';
import { showNumber, showProbability, VERDICTS } from '../../placement/words.ts';

const right = { numeric: true } as const;
type Row = GroupPlacement & { readonly replica: string };
const DISTANCES: TableColumn<Row>[] = [
  column('replica', 'Replica', (row) => row.replica, { header: true }),
  column('name', 'Ware group', (row) => row.name),
  column('verdict', 'Verdict', (row) => VERDICTS[row.verdict].label),
  column('membership', 'Membership probability', (row) => row.membership, {
    ...right,
    cell: (row) => showProbability(row.membership) ?? '–',
  }),
  column('rank', 'Members at least as far', (row) => row.typicality?.atLeastAsFar ?? null, {
    ...right,
    cell: ({ typicality }) => (typicality ? `${typicality.atLeastAsFar} of ${typicality.of}` : '–'),
  }),
  column('n', 'n', (row) => row.n, right),
  column('p', 'p', (row) => row.p, { ...right, cell: (row) => row.p ?? '–' }),
  column('distance', 'Distance', (row) => row.distance, {
    ...right,
    cell: (row) => showNumber(row.distance),
  }),
  column('d2', 'D²', (row) => row.d2, { ...right, cell: (row) => showNumber(row.d2) ?? '–' }),
  column('method', 'Method', (row) => row.method),
];

export function GroupDistancesTable({ placements }: { readonly placements: readonly Placement[] }) {
  const rows = placements.flatMap(({ label, groups }) =>
    groups.map((group) => ({ ...group, replica: label })),
  );
  return (
    <DownloadableTable
      label="Replicas against each ware group"
      file="replicas against groups"
      columns={DISTANCES}
      rows={rows}
      rowKey={(row) => `${row.replica} ${row.group}`}
      cards={false}
    />
  );
}

interface Composed {
  readonly label: string;
  readonly parts: readonly number[];
}
const oxides = <R extends Composed>(model: ReferenceModel): TableColumn<R>[] =>
  model.parts.map((oxide, k) =>
    column<R>(oxide, showAnalyte(oxide), (row) => row.parts[k]!, {
      ...right,
      cell: (row) => showSignificant(row.parts[k]!),
    }),
  );

export function ReplicasTable(at: {
  readonly model: ReferenceModel;
  readonly placements: readonly Placement[];
}) {
  return (
    <DownloadableTable
      label="Replicas, wt%"
      file="replicas"
      columns={[
        column<Placement>('label', 'Replica', (row) => row.label, { header: true }),
        column<Placement>('spots', 'Spots', (row) => row.spots, right),
        ...oxides<Placement>(at.model),
      ]}
      rows={at.placements}
      rowKey={(row) => row.id}
      cards={false}
    />
  );
}

export function MembersTable(at: {
  readonly model: ReferenceModel;
  readonly slots: Readonly<Record<string, number>>;
}) {
  const names = new Map(at.model.groups.map(({ id, name }) => [id, name]));
  return (
    <DownloadableTable
      label="Reference sherds, wt%"
      file="reference sherds"
      columns={[
        column<Member>('label', 'Sherd', (row) => row.label, { header: true }),
        column<Member>('group', 'Ware group', (row) => names.get(row.group) ?? row.group, {
          cell: (row) => (
            <span>
              <GroupMark slot={at.slots[row.group] ?? 0} /> {names.get(row.group)}
            </span>
          ),
        }),
        ...oxides<Member>(at.model),
      ]}
      rows={at.model.members}
      rowKey={(row) => row.id}
      cards={false}
    />
  );
}

type Excluded = Comparison['excluded'][number];
export function ExcludedTable({ excluded }: { readonly excluded: readonly Excluded[] }) {
  if (excluded.length === 0) return <p>Everything that was asked for is in.</p>;
  return (
    <DownloadableTable
      label="Specimens left out"
      file="specimens left out"
      columns={[
        column<Excluded>('label', 'Specimen', (row) => row.label, { header: true }),
        column<Excluded>('reason', 'Why', (row) => row.reason),
      ]}
      rows={excluded}
      rowKey={(row) => `${row.specimen} ${row.analysis} ${row.reason}`}
    />
  );
}
