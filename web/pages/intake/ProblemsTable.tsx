import type { ImportProblem, Preview } from '../../../api/contract/intake.ts';
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

const COLUMNS: readonly Column<ImportProblem>[] = [
  {
    id: 'severity',
    label: 'What',
    cell: ({ severity }) =>
      severity === 'error' ? <Tag kind="error">error</Tag> : <Tag kind="caution">warning</Tag>,
  },
  { id: 'where', label: 'Where', cell: whereOf },
  { id: 'message', label: 'What is needed', cell: (problem) => problem.message },
];

/** What stands in the way, and what is worth a look, by row and column. */
export function ProblemList({ problems }: { readonly problems: readonly ImportProblem[] }) {
  const rank = { error: 0, warning: 1 };
  const rows = problems.toSorted((a, b) => rank[a.severity] - rank[b.severity]);
  return (
    <div className="tall">
      <DataTable
        label="Problems"
        columns={COLUMNS}
        rows={rows}
        rowKey={(one) => `${one.code} ${one.row} ${one.column?.index} ${one.message}`}
      />
    </div>
  );
}

export function ProblemsTable(at: {
  readonly problems: readonly ImportProblem[];
  readonly counts: Preview['counts'];
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
      <ProblemList problems={at.problems} />
    </section>
  );
}
