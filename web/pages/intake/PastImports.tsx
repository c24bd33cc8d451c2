import type { DataImport } from '../../../api/contract/import.ts';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { Tag } from '../../parts/Notice.tsx';
import { useImports } from '../../queries/imports.ts';
import { TakeBack } from './ImportRun.tsx';

const STATUS = {
  running: <Tag>under way</Tag>,
  done: <Tag kind="done">brought in</Tag>,
  failed: <Tag kind="error">refused</Tag>,
  stopped: <Tag kind="caution">stopped</Tag>,
} as const;

const day = (instant: string) =>
  new Date(instant).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });

/** What came in before, and the way to take it back. */
export function PastImports({ study }: { readonly study: string }) {
  const rows = useImports(study).data ?? [];
  if (rows.length === 0) return null;
  const columns: readonly Column<DataImport>[] = [
    { id: 'file', label: 'File', header: true, cell: (run) => run.fileName || 'pasted table' },
    { id: 'when', label: 'When', cell: (run) => day(run.createdAt) },
    { id: 'status', label: 'Outcome', cell: (run) => STATUS[run.status] },
    { id: 'analyses', label: 'Analyses', numeric: true, cell: (run) => run.analyses },
    { id: 'specimens', label: 'New specimens', numeric: true, cell: (run) => run.specimens },
    {
      id: 'actions',
      label: 'Actions',
      hideLabel: true,
      cell: (run) => (run.status === 'done' ? <TakeBack study={study} run={run} /> : null),
    },
  ];
  return (
    <section className="stack" aria-labelledby="past">
      <h2 id="past">Brought in before</h2>
      <DataTable label="Brought in before" columns={columns} rows={rows} rowKey={(run) => run.id} />
    </section>
  );
}
