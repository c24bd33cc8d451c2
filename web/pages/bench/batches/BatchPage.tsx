import { useState } from 'react';
import { useLocation } from 'wouter';
import type { Batch } from '../../../../api/contract/batch.ts';
import { LinkButton } from '../../../parts/Button.tsx';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useBatches, useDeleteBatch } from '../../../queries/bench.ts';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { batchPath, benchPath } from '../paths.ts';
import { BatchEditor } from './BatchEditor.tsx';
import { formOfBatch } from './batch-form.ts';

interface BatchPageProps {
  readonly study: string;
  readonly batch: string;
}

/** One batch: what is weighed, what it fires to, and where it leads. */
export function BatchPage({ study, batch: id }: BatchPageProps) {
  const batches = useBatches(study);
  return (
    <WithShelf study={study}>
      {(bench) => (
        <Loaded query={batches} what="the batch" page>
          {(rows) => {
            const batch = rows.find((one) => one.id === id);
            if (!batch) return <Gone study={study} />;
            return <OneBatch key={batch.updatedAt} study={study} bench={bench} batch={batch} />;
          }}
        </Loaded>
      )}
    </WithShelf>
  );
}

export function Gone({ study }: { readonly study: string }) {
  return (
    <PageHead
      title="This batch is not here"
      lead="It may have been deleted."
      up={{ to: benchPath(study), label: 'Batches' }}
    />
  );
}

function OneBatch(at: { readonly study: string; readonly bench: Bench; readonly batch: Batch }) {
  const { study, batch } = at;
  const draft = useDraft(`batch.${study}.${batch.id}`, formOfBatch(batch));
  const [saved, setSaved] = useState(false);
  const remove = useDeleteBatch(study);
  const [, navigate] = useLocation();
  return (
    <>
      <PageHead
        title={batch.name}
        up={{ to: benchPath(study), label: 'Batches' }}
        lead={batch.target && <p>Found for {batch.target.name}.</p>}
        actions={
          <>
            <LinkButton to={batchPath(study, batch.id, '/sheet')}>Bench sheet</LinkButton>
            <LinkButton to={batchPath(study, batch.id, '/measured')}>Set beside a tile</LinkButton>
            <LinkButton to={`${benchPath(study, '/batches/new')}?from=${batch.id}`} look="quiet">
              Copy
            </LinkButton>
            <ConfirmDelete
              label="Delete this batch"
              title={`Delete ${batch.name}?`}
              lost={<p>The batch will be lost; replicas made of it stay. This cannot be undone.</p>}
              onDelete={async () => {
                await remove.mutateAsync(batch.id);
                navigate(benchPath(study));
              }}
            />
          </>
        }
      />
      {saved && <Notice kind="done">Saved.</Notice>}
      <BatchEditor
        study={study}
        bench={at.bench}
        batch={batch}
        draft={draft}
        onSaved={() => {
          draft.clear();
          setSaved(true);
        }}
      />
    </>
  );
}
