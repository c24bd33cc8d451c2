import type { NewSpecimen, Specimen, SpecimenKind } from '../../../api/contract/specimen.ts';
import type { WareGroup } from '../../../api/contract/ware-group.ts';
import { Dialog } from '../../parts/Dialog.tsx';
import { Field } from '../../parts/Field.tsx';
import { FormDialog } from '../../parts/FormDialog.tsx';
import { Select } from '../../parts/Select.tsx';
import { useDraft } from '../../parts/useDraft.ts';
import { useSaveSpecimen } from '../../queries/specimens.ts';
import { KIND_CHOICES } from './words.ts';

const BLANK: NewSpecimen = { label: '', catalogueNumber: '', kind: 'sherd', group: null, notes: '' };
export const NO_GROUP = 'none';

export function groupChoices(groups: readonly WareGroup[]) {
  return [
    { id: NO_GROUP, label: 'Without a group' },
    ...groups.map((group) => ({ id: group.id, label: group.name })),
  ];
}

interface SpecimenDialogProps {
  readonly study: string;
  readonly groups: readonly WareGroup[];
  /** The specimen to change, `new`, or null when closed. */
  readonly specimen: Specimen | 'new' | null;
  readonly onClose: () => void;
}

export function SpecimenDialog({ study, groups, specimen, onClose }: SpecimenDialogProps) {
  const title = specimen === 'new' ? 'New specimen' : 'Change the specimen';
  return (
    <Dialog title={title} open={specimen !== null} onClose={onClose}>
      {specimen !== null && (
        <SpecimenForm
          study={study}
          groups={groups}
          specimen={specimen === 'new' ? null : specimen}
          onClose={onClose}
        />
      )}
    </Dialog>
  );
}

function fieldsOf(specimen: Specimen | null): NewSpecimen {
  if (!specimen) return BLANK;
  const { label, catalogueNumber, kind, group, notes } = specimen;
  return { label, catalogueNumber, kind, group, notes };
}

function SpecimenForm(at: {
  readonly study: string;
  readonly groups: readonly WareGroup[];
  readonly specimen: Specimen | null;
  readonly onClose: () => void;
}) {
  const save = useSaveSpecimen(at.study, at.specimen?.id ?? null);
  const draft = useDraft(`specimen.${at.study}.${at.specimen?.id ?? 'new'}`, fieldsOf(at.specimen));
  const fields = draft.value;
  const set = (part: Partial<NewSpecimen>) => draft.set({ ...fields, ...part });
  const leave = () => {
    draft.clear();
    at.onClose();
  };
  return (
    <FormDialog
      onSubmit={() => save.mutate(fields, { onSuccess: leave })}
      onCancel={leave}
      save={at.specimen ? 'Save' : 'Create the specimen'}
      busy={save.isPending}
      error={save.error}
      restored={draft.restored}
    >
      <Field label="Label" value={fields.label} onChange={(label) => set({ label })} isRequired autoFocus />
      <Field
        label="Catalogue number"
        value={fields.catalogueNumber}
        onChange={(catalogueNumber) => set({ catalogueNumber })}
      />
      <div className="fields">
        <Select<SpecimenKind>
          label="Kind"
          choices={KIND_CHOICES}
          value={fields.kind}
          onChange={(kind) => set({ kind })}
        />
        <Select
          label="Ware group"
          choices={groupChoices(at.groups)}
          value={fields.group ?? NO_GROUP}
          onChange={(id) => set({ group: id === NO_GROUP ? null : id })}
        />
      </div>
      <Field label="Notes" value={fields.notes} onChange={(notes) => set({ notes })} lines={3} />
    </FormDialog>
  );
}
