import type { GroupPlacement, Placement } from '../../../../api/domain/placement/types.ts';
import { Tag } from '../../../parts/Notice.tsx';
import { GroupMark } from '../GroupMark.tsx';
import { showNumber, showProbability, VERDICTS, withFormulas } from '../words.ts';
import { column, DownloadableTable, type TableColumn } from './DownloadableTable.tsx';

type Row = GroupPlacement;
const right = { numeric: true } as const;

const columnsWith = (slots: Readonly<Record<string, number>>): TableColumn<Row>[] => [
  column('group', 'Ware group', (row) => row.name, {
    header: true,
    cell: (row) => (
      <span>
        <GroupMark slot={slots[row.group] ?? 0} /> {row.name}
      </span>
    ),
  }),
  column('verdict', 'Verdict', (row) => VERDICTS[row.verdict].label, {
    cell: (row) => <Tag kind={VERDICTS[row.verdict].kind}>{VERDICTS[row.verdict].label}</Tag>,
  }),
  column('membership', 'Membership probability', (row) => row.membership, {
    ...right,
    cell: (row) => showProbability(row.membership) ?? '–',
  }),
  column('rank', 'Members at least as far', (row) => (row.typicality ? row.typicality.atLeastAsFar : null), {
    ...right,
    cell: rankOf,
  }),
  column('n', 'Sherds n', (row) => row.n, right),
  column('p', 'Directions p', (row) => row.p, { ...right, cell: (row) => row.p ?? '–' }),
  column('distance', 'Distance to centre', (row) => row.distance, {
    ...right,
    cell: (row) => showNumber(row.distance),
  }),
  column('d2', 'D²', (row) => row.d2, { ...right, cell: (row) => showNumber(row.d2) ?? '–' }),
  column('df', 'Degrees of freedom', (row) => row.df?.join('; ') ?? null, {
    ...right,
    cell: (row) => row.df?.join(', ') ?? '–',
  }),
  column('off', 'Off the components', (row) => row.off?.distance ?? null, { ...right, cell: offOf }),
  column('method', 'Method', (row) => row.method),
];
const moreInFile: TableColumn<Row>[] = [
  column('of', 'of members', (row) => row.typicality?.of ?? null),
  column('typicality', 'Rank typicality', (row) => row.typicality?.value ?? null),
  column('furthest', 'Furthest member off the components', (row) => row.off?.furthestMember ?? null),
  column('loo', 'Leave-one-out', (row) => (row.leaveOneOut ? 'yes' : 'no')),
  column('refusal', 'Refused because', (row) => row.refusal ?? row.membershipRefusal),
  column('warnings', 'Warnings', (row) => row.warnings.join(' ')),
];

function rankOf({ typicality }: Row): string {
  return typicality ? `${typicality.atLeastAsFar} of ${typicality.of}` : '–';
}
function offOf({ off }: Row): string {
  return off ? `${showNumber(off.distance)} (furthest member ${showNumber(off.furthestMember)})` : '–';
}

/** One replica against every ware group, with all that the answer rests on. */
export function GroupsTable(at: {
  readonly placement: Placement;
  readonly slots: Readonly<Record<string, number>>;
}) {
  const { placement } = at;
  const columns = columnsWith(at.slots);
  const oxides = placement.groups[0]?.contributions.map(({ oxide }) => oxide) ?? [];
  const notes = placement.groups.flatMap((row) =>
    [row.refusal, row.membershipRefusal, ...row.warnings]
      .filter((note) => note !== null)
      .map((note) => ({ key: `${row.group} ${note}`, name: row.name, note })),
  );
  return (
    <>
      <DownloadableTable
        label={`${placement.label} against each ware group`}
        file={`${placement.label} against groups`}
        columns={columns}
        fileColumns={[...columns, ...moreInFile]}
        rows={placement.groups}
        rowKey={(row) => row.group}
      />
      {notes.length > 0 && (
        <ul className="notes small">
          {notes.map(({ key, name, note }) => (
            <li key={key}>
              <strong>{name}:</strong> {withFormulas(note, oxides)}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
