import type { NewStudy, Study } from '../../../api/contract/study.ts';
import { Dialog } from '../../parts/Dialog.tsx';
import { Field } from '../../parts/Field.tsx';
import { FormDialog } from '../../parts/FormDialog.tsx';
import { useDraft } from '../../parts/useDraft.ts';
import { useChangeStudy, useCreateStudy } from '../../queries/studies.ts';

const BLANK: NewStudy = { name: '', place: '', notes: '' };

export interface StudyDialogProps {
  readonly open: boolean;
  readonly onClose: () => void;
  readonly onSaved: (study: Study) => void;
  /** The study to change; a new one when absent. */
  readonly study?: Study;
}

/** Names a study, or names it anew. */
export function StudyDialog({ open, onClose, ...rest }: StudyDialogProps) {
  return (
    <Dialog title={rest.study ? 'Change the study' : 'New study'} open={open} onClose={onClose}>
      <StudyForm onClose={onClose} {...rest} />
    </Dialog>
  );
}

function StudyForm({ study, onClose, onSaved }: Omit<StudyDialogProps, 'open'>) {
  const create = useCreateStudy();
  const change = useChangeStudy(study?.id ?? '');
  const save = study ? change : create;
  const draft = useDraft<NewStudy>(`study.${study?.id ?? 'new'}`, study ?? BLANK);
  const { name, place, notes } = draft.value;
  const set = (part: Partial<NewStudy>) => draft.set({ name, place, notes, ...part });
  const leave = () => {
    draft.clear();
    onClose();
  };
  const submit = () =>
    save.mutate(
      { name, place, notes },
      {
        onSuccess: (saved) => {
          leave();
          onSaved(saved);
        },
      },
    );
  return (
    <FormDialog
      onSubmit={submit}
      onCancel={leave}
      save={study ? 'Save' : 'Create the study'}
      busy={save.isPending}
      error={save.error}
      restored={draft.restored}
    >
      <Field label="Name" value={name} onChange={(text) => set({ name: text })} isRequired autoFocus />
      <Field
        label="Place"
        value={place}
        onChange={(text) => set({ place: text })}
        hint="Site, region or workshop"
      />
      <Field label="Notes" value={notes} onChange={(text) => set({ notes: text })} lines={4} />
    </FormDialog>
  );
}
