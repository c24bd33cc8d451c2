import { Link } from 'wouter';
import type { Batch } from '../../../../api/contract/batch.ts';
import { LinkButton } from '../../../parts/Button.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import type { PageProps } from '../../../paths.ts';
import { useBatches } from '../../../queries/bench.ts';
import { useSpecimens } from '../../../queries/specimens.ts';
import { fireHere } from '../fired/compute.ts';
import { attempt } from '../parts/attempt.ts';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { batchPath, benchPath } from '../paths.ts';

/** Every batch of the study, with the main oxides it fires to. */
export function BatchesPage({ study }: PageProps) {
  const batches = useBatches(study);
  const replicas = useSpecimens(study, { kind: 'replica', limit: 500 });
  const labels = new Map((replicas.data?.rows ?? []).map(({ id, label }) => [id, label]));
  return (
    <>
      <PageHead
        title="Batches"
        lead="What is weighed, and what it will be once fired: minerals lose sulfur, carbonate and water on the way."
        actions={
          <>
            <LinkButton to={benchPath(study, '/batches/new')} look="primary">
              New batch
            </LinkButton>
            <LinkButton to={benchPath(study, '/target')}>Find one for a target</LinkButton>
          </>
        }
      />
      <WithShelf study={study}>
        {(bench) => (
          <Loaded query={batches} what="the batches">
            {(rows) =>
              rows.length === 0 ? (
                <NoBatches study={study} />
              ) : (
                <DataTable
                  label="Batches"
                  columns={columnsFor(study, bench, labels)}
                  rows={rows}
                  rowKey={(row) => row.id}
                />
              )
            }
          </Loaded>
        )}
      </WithShelf>
    </>
  );
}

function NoBatches({ study }: PageProps) {
  return (
    <EmptyState
      title="Nothing weighed yet"
      actions={<LinkButton to={benchPath(study, '/batches/new')}>New batch</LinkButton>}
    >
      <p>
        Weigh a batch from the starter shelf or your own materials, or start from a ware group and let its
        batch be found.
      </p>
    </EmptyState>
  );
}

function columnsFor(study: string, bench: Bench, labels: ReadonlyMap<string, string>): Column<Batch>[] {
  const names = (batch: Batch) => batch.specimens.map((id) => labels.get(id) ?? 'a replica').join(', ');
  return [
    {
      id: 'name',
      label: 'Batch',
      header: true,
      cell: (row) => (
        <Link className="cell" href={batchPath(study, row.id)}>
          {row.name}
        </Link>
      ),
    },
    { id: 'lines', label: 'Weighed from', prose: true, cell: (row) => linesInWords(row, bench) },
    { id: 'fired', label: 'Fires to, wt%', prose: true, cell: (row) => mainOxides(row, bench) },
    { id: 'tiles', label: 'Replicas', cell: names },
  ];
}

function linesInWords({ lines }: Batch, { shelf }: Bench): string {
  return lines.map((line) => shelf.materials.get(line.material)?.name ?? 'a lost material').join(', ');
}

const MAIN = 4;

function mainOxides({ lines, fire }: Batch, { shelf }: Bench): string {
  const { value, reason } = attempt(() => fireHere(lines, fire, shelf));
  if (!value) return `Cannot be fired: ${reason}`;
  return [...value.fired.oxides]
    .sort((a, b) => b.percent - a.percent)
    .slice(0, MAIN)
    .map((one) => `${showAnalyte(one.oxide)} ${one.percent.toFixed(1)}`)
    .join(', ');
}
