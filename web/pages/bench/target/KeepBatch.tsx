import { useState } from 'react';
import { useLocation } from 'wouter';
import type { RecipeSolution } from '../../../../api/domain/batch/nearest-batch.ts';
import { Dialog } from '../../../parts/Dialog.tsx';
import { Field } from '../../../parts/Field.tsx';
import { FormDialog } from '../../../parts/FormDialog.tsx';
import { useSaveBatch } from '../../../queries/bench.ts';
import type { FireForm } from '../parts/fire-form.ts';
import { batchPath } from '../paths.ts';
import { batchOf } from './found-batch.ts';
import type { Aimed } from './target-form.ts';

interface KeepBatchProps {
  readonly study: string;
  /** The batch to keep; null when closed. */
  readonly solution: RecipeSolution | null;
  readonly aimed: Aimed;
  readonly fire: FireForm;
  readonly onClose: () => void;
}

/** Takes a found batch over as one of the study's own. */
export function KeepBatch(at: KeepBatchProps) {
  return (
    <Dialog title="Keep this batch" open={at.solution !== null} onClose={at.onClose}>
      {at.solution && <KeepForm {...at} solution={at.solution} />}
    </Dialog>
  );
}

function KeepForm({ study, solution, aimed, fire, onClose }: KeepBatchProps & { solution: RecipeSolution }) {
  const [name, setName] = useState(`For ${aimed.name}`);
  const save = useSaveBatch(study, null);
  const [, navigate] = useLocation();
  const keep = () => {
    const json = batchOf({ solution, aimed, fire }, name);
    if (json === null) return;
    save.mutate(json, { onSuccess: ({ id }) => navigate(batchPath(study, id)) });
  };
  return (
    <FormDialog onSubmit={keep} onCancel={onClose} save="Keep it" busy={save.isPending} error={save.error}>
      <Field label="Name" value={name} onChange={setName} isRequired autoFocus />
      <p className="faint">100 g of dry batch; it can be scaled and changed.</p>
    </FormDialog>
  );
}
