import type { ImportProblem, Preview } from '../../../api/contract/intake.ts';
import { Button } from '../../parts/Button.tsx';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { Notice, Tag } from '../../parts/Notice.tsx';
import { count } from '../../parts/numbers.ts';

function whereOf({ row, column }: ImportProblem): string {
  const parts = [
    row !== null && `row ${row}`,
    column && `column ${column.letter}${column.header ? ` “${column.header}”` : ''}`,
  ];
  return parts.filter(Boolean).join(', ') || 'the table';
}

type LeaveOut = (row: number) => void;

const columnsFor = (onLeaveOut: LeaveOut | undefined): Column<ImportProblem>[] => [
  {
    id: 'severity',
    label: 'What',
    cell: ({ severity }) =>
      severity === 'error' ? <Tag kind="error">error</Tag> : <Tag kind="caution">warning</Tag>,
  },
  { id: 'where', label: 'Where', cell: whereOf },
  { id: 'message', label: 'What is needed', prose: true, cell: (problem) => problem.message },
  ...(onLeaveOut ? [leaveOutColumn(onLeaveOut)] : []),
];

const leaveOutColumn = (onLeaveOut: LeaveOut): Column<ImportProblem> => ({
  id: 'leave',
  label: 'Leave the row out',
  hideLabel: true,
  cell: ({ severity, row }) =>
    severity === 'error' && row !== null ? (
      <Button look="quiet" onPress={() => onLeaveOut(row)}>
        Leave row {row} out
      </Button>
    ) : null,
});

/** What stands in the way, and what is worth a look, by row and column. */
export function ProblemList(at: {
  readonly problems: readonly ImportProblem[];
  readonly onLeaveOut?: LeaveOut;
}) {
  const rank = { error: 0, warning: 1 };
  const rows = at.problems.toSorted((a, b) => rank[a.severity] - rank[b.severity]);
  return (
    <div className="tall">
      <DataTable
        label="Problems"
        columns={columnsFor(at.onLeaveOut)}
        rows={rows}
        rowKey={(one) => `${one.code} ${one.row} ${one.column?.index} ${one.message}`}
      />
    </div>
  );
}

export function ProblemsTable(at: {
  readonly problems: readonly ImportProblem[];
  readonly counts: Preview['counts'];
  readonly onLeaveOut: LeaveOut;
}) {
  const { errors, warnings } = at.counts;
  if (at.problems.length === 0) return null;
  const words = [errors > 0 && count(errors, 'error'), warnings > 0 && count(warnings, 'warning')];
  return (
    <section className="stack" aria-labelledby="problems">
      <h2 id="problems">{words.filter(Boolean).join(' and ')}</h2>
      {errors > 0 && (
        <Notice kind="error">
          <p>
            Mend {errors === 1 ? 'it' : 'them'} in the file, or change below how it is read. Until then
            nothing is stored.
          </p>
        </Notice>
      )}
      <ProblemList problems={at.problems} onLeaveOut={at.onLeaveOut} />
    </section>
  );
}
