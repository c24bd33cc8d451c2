import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { Field } from '../../parts/Field.tsx';
import type { LeftOut } from './settings.ts';

/** Leaves one sherd out of the references, with the reason that is shown beside every result. */
export function LeaveOut(at: {
  readonly specimen: string;
  readonly label: string;
  readonly onLeaveOut: (one: LeftOut) => void;
}) {
  const [open, setOpen] = useState(false);
  const [reason, setReason] = useState('');
  const leave = () => {
    at.onLeaveOut({ specimen: at.specimen, label: at.label, reason: reason.trim() });
    setOpen(false);
  };
  return (
    <>
      <Button look="quiet" onPress={() => setOpen(true)}>
        Leave {at.label} out …
      </Button>
      <Dialog title={`Leave ${at.label} out of the comparison`} open={open} onClose={() => setOpen(false)}>
        <p>It stays in the study. The reason is shown with every result it is left out of.</p>
        <Field label="Reason" value={reason} onChange={setReason} autoFocus placeholder="Weathered surface" />
        <div className="row end">
          <Button onPress={() => setOpen(false)}>Keep it in</Button>
          <Button look="primary" isDisabled={reason.trim() === ''} onPress={leave}>
            Leave it out
          </Button>
        </div>
      </Dialog>
    </>
  );
}
