import { type ReactNode, useState } from 'react';
import { Button, type ButtonLook } from './Button.tsx';
import { Dialog } from './Dialog.tsx';
import { ErrorNotice } from './Notice.tsx';

export interface ConfirmDeleteProps {
  /** What the opening button says, as in `Delete this study`. */
  readonly label: string;
  /** The question, as in `Delete “Brook Hollow”?` */
  readonly title: string;
  /** Everything that goes with it, named and counted. */
  readonly lost: ReactNode;
  readonly onDelete: () => Promise<unknown>;
  readonly look?: ButtonLook;
  /** What the deciding button says; `Delete` otherwise. */
  readonly confirm?: string;
  /** Tells rows apart where many say only `Delete`. */
  readonly name?: string;
}

/** A button that deletes only after naming what is lost. */
export function ConfirmDelete(at: ConfirmDeleteProps) {
  const [open, setOpen] = useState(false);
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<unknown>(null);
  const close = () => {
    setOpen(false);
    setError(null);
  };
  const remove = async () => {
    setBusy(true);
    setError(null);
    try {
      await at.onDelete();
      close();
    } catch (reason) {
      setError(reason);
    } finally {
      setBusy(false);
    }
  };
  return (
    <>
      <Button
        look={at.look ?? 'danger quiet'}
        {...(at.name ? { 'aria-label': `${at.label} ${at.name}` } : {})}
        onPress={() => setOpen(true)}
      >
        {at.label}
      </Button>
      <Dialog title={at.title} open={open} onClose={close} role="alertdialog">
        <div className="stack tight">{at.lost}</div>
        <ErrorNotice error={error} />
        <div className="row end">
          <Button autoFocus onPress={close}>
            Keep it
          </Button>
          <Button look="danger primary" isPending={busy} onPress={remove}>
            {at.confirm ?? 'Delete'}
          </Button>
        </div>
      </Dialog>
    </>
  );
}
