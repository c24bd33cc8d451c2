import { useLocation, useSearchParams } from 'wouter';
import type { Batch } from '../../../../api/contract/batch.ts';
import { Loaded } from '../../../parts/Loaded.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import type { PageProps } from '../../../paths.ts';
import { useBatches } from '../../../queries/bench.ts';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { batchPath, benchPath } from '../paths.ts';
import { BatchEditor } from './BatchEditor.tsx';
import { BLANK_BATCH, formOfBatch } from './batch-form.ts';

/** A new batch: from nothing, or like another. */
export function NewBatchPage({ study }: PageProps) {
  const [asked] = useSearchParams();
  const from = asked.get('from');
  const batches = useBatches(study);
  return (
    <>
      <PageHead title="New batch" up={{ to: benchPath(study), label: 'Batches' }} />
      <WithShelf study={study}>
        {(bench) => (
          <Loaded query={batches} what="the batches">
            {(rows) => (
              <NewBatch
                key={from}
                study={study}
                bench={bench}
                like={rows.find((one) => one.id === from) ?? null}
              />
            )}
          </Loaded>
        )}
      </WithShelf>
    </>
  );
}

function NewBatch(at: { readonly study: string; readonly bench: Bench; readonly like: Batch | null }) {
  const [, navigate] = useLocation();
  const { study, like } = at;
  const start = like ? { ...formOfBatch(like), name: `${like.name}, changed`, specimens: [] } : BLANK_BATCH;
  const draft = useDraft(`batch.${study}.new.${like?.id ?? ''}`, start);
  const saved = ({ id }: Batch) => {
    draft.clear();
    navigate(batchPath(study, id));
  };
  return <BatchEditor study={study} bench={at.bench} batch={null} draft={draft} onSaved={saved} />;
}
