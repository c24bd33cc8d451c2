import { groupSpokenOf } from '../../../../api/domain/placement/sentence.ts';
import type { Placement } from '../../../../api/domain/placement/types.ts';
import { howFarOff } from '../../../../api/figures/profile-layout.ts';
import { Button } from '../../../parts/Button.tsx';
import { Tag } from '../../../parts/Notice.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { showNumber, showProbability, VERDICTS } from '../words.ts';
import { column, DownloadableTable, type TableColumn } from './DownloadableTable.tsx';

const right = { numeric: true } as const;
const groupOf = (row: Placement) => groupSpokenOf(row.groups);
const worst = (row: Placement) =>
  [...(groupOf(row)?.contributions ?? [])].sort((one, other) => other.share - one.share)[0];
function gapOf(row: Placement): string {
  const most = worst(row);
  return most ? `${showAnalyte(most.oxide)} ${howFarOff(most.factor)}` : '–';
}

/** All replicas at a glance; each row leads to its replica. */
export function OverviewTable(at: {
  readonly placements: readonly Placement[];
  readonly chosen: string | null;
  readonly onChoose: (replica: string) => void;
}) {
  const columns: TableColumn<Placement>[] = [
    column('label', 'Replica', (row) => row.label, {
      header: true,
      cell: (row) => (
        <Button
          look="quiet"
          aria-pressed={row.id === at.chosen}
          aria-label={`Look at ${row.label}`}
          onPress={() => at.onChoose(row.id)}
        >
          {row.label}
        </Button>
      ),
    }),
    column('group', 'Ware group', (row) => groupOf(row)?.name ?? null),
    column('verdict', 'Verdict', (row) => (groupOf(row) ? VERDICTS[groupOf(row)!.verdict].label : null), {
      cell: (row) => {
        const group = groupOf(row);
        return group && <Tag kind={VERDICTS[group.verdict].kind}>{VERDICTS[group.verdict].label}</Tag>;
      },
    }),
    column('membership', 'Membership probability', (row) => groupOf(row)?.membership ?? null, {
      ...right,
      cell: (row) => showProbability(groupOf(row)?.membership ?? null) ?? '–',
    }),
    column('distance', 'Distance to centre', (row) => groupOf(row)?.distance ?? null, {
      ...right,
      cell: (row) => showNumber(groupOf(row)?.distance ?? null) ?? '–',
    }),
    column('gap', 'Furthest off', gapOf),
    column('spots', 'Spots', (row) => row.spots, right),
  ];
  const sentence = column<Placement>('sentence', 'In words', (row) => row.sentence);
  return (
    <DownloadableTable
      label="All replicas at a glance"
      file="replicas at a glance"
      columns={columns}
      fileColumns={[...columns, sentence]}
      rows={at.placements}
      rowKey={(row) => row.id}
    />
  );
}
