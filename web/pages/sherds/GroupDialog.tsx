import type { NewWareGroup, WareGroup, WareGroupChange } from '../../../api/contract/ware-group.ts';
import { Dialog } from '../../parts/Dialog.tsx';
import { Field } from '../../parts/Field.tsx';
import { FormDialog } from '../../parts/FormDialog.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { useDraft } from '../../parts/useDraft.ts';
import { useSaveGroup } from '../../queries/groups.ts';

type GroupFields = NewWareGroup & Pick<WareGroupChange, 'position'>;

const BLANK: GroupFields = { name: '', period: '', place: '', source: '', doi: '', notes: '' };

interface GroupDialogProps {
  readonly study: string;
  /** The group to change, `new`, or null when closed. */
  readonly group: WareGroup | 'new' | null;
  readonly onClose: () => void;
}

export function GroupDialog({ study, group, onClose }: GroupDialogProps) {
  const title = group === 'new' ? 'New ware group' : 'Change the ware group';
  return (
    <Dialog title={title} open={group !== null} onClose={onClose}>
      {group !== null && <GroupForm study={study} group={group === 'new' ? null : group} onClose={onClose} />}
    </Dialog>
  );
}

function fieldsOf(group: WareGroup | null): GroupFields {
  if (!group) return BLANK;
  const { name, period, place, source, doi, notes, position } = group;
  return { name, period, place, source, doi, notes, position };
}

function GroupForm(at: {
  readonly study: string;
  readonly group: WareGroup | null;
  readonly onClose: () => void;
}) {
  const save = useSaveGroup(at.study, at.group?.id ?? null);
  const draft = useDraft<GroupFields>(`group.${at.study}.${at.group?.id ?? 'new'}`, fieldsOf(at.group));
  const fields = draft.value;
  const bind = (key: keyof NewWareGroup) => ({
    value: fields[key],
    onChange: (text: string) => draft.set({ ...fields, [key]: text }),
  });
  const leave = () => {
    draft.clear();
    at.onClose();
  };
  return (
    <FormDialog
      onSubmit={() => save.mutate(fields, { onSuccess: leave })}
      onCancel={leave}
      save={at.group ? 'Save' : 'Create the ware group'}
      busy={save.isPending}
      error={save.error}
      restored={draft.restored}
    >
      <Field label="Name" {...bind('name')} isRequired autoFocus />
      <div className="fields">
        <Field label="Period" {...bind('period')} />
        <Field label="Place" {...bind('place')} />
      </div>
      <Field label="Source" {...bind('source')} hint="Who published it, or whose collection" />
      <Field label="DOI" {...bind('doi')} placeholder="10.…" />
      {at.group && (
        <NumberField
          label="Place in the order"
          hint="Its colour and mark in the figures follow it"
          min={1}
          whole
          value={(fields.position ?? 0) + 1}
          onChange={(place) => place !== null && draft.set({ ...fields, position: place - 1 })}
        />
      )}
      <Field label="Notes" {...bind('notes')} lines={3} />
    </FormDialog>
  );
}
