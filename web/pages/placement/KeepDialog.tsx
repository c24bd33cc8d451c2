import { useState } from 'react';
import { Dialog } from '../../parts/Dialog.tsx';
import { Field } from '../../parts/Field.tsx';
import { FormDialog } from '../../parts/FormDialog.tsx';

export interface Naming {
  readonly name: string;
  readonly note: string;
}

/** Asks for the name and note of a placement to be kept, or of one that is. */
export function KeepDialog(at: {
  readonly title: string;
  readonly lead?: string;
  readonly start: Naming;
  readonly action: string;
  readonly open: boolean;
  readonly onClose: () => void;
  readonly onKeep: (naming: Naming) => Promise<unknown>;
}) {
  const [name, setName] = useState(at.start.name);
  const [note, setNote] = useState(at.start.note);
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const keep = async () => {
    setBusy(true);
    setError(null);
    try {
      await at.onKeep({ name: name.trim(), note });
      at.onClose();
    } catch (reason) {
      setError(reason);
    } finally {
      setBusy(false);
    }
  };
  return (
    <Dialog title={at.title} open={at.open} onClose={at.onClose}>
      {at.lead && <p>{at.lead}</p>}
      <FormDialog onSubmit={keep} onCancel={at.onClose} save={at.action} busy={busy} error={error}>
        <Field label="Name" value={name} onChange={setName} isRequired autoFocus />
        <Field label="Note" value={note} onChange={setNote} lines={3} />
      </FormDialog>
    </Dialog>
  );
}
