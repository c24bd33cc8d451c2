import type { ReactNode } from 'react';
import { Form } from 'react-aria-components';
import { Button } from './Button.tsx';
import { ErrorNotice, Notice } from './Notice.tsx';

/** The inside of a dialog that saves something: its fields, what went wrong, Cancel and Save. */
export function FormDialog(at: {
  readonly onSubmit: () => void;
  readonly onCancel: () => void;
  readonly save: string;
  readonly busy: boolean;
  readonly error: unknown;
  /** The fields hold what was typed before a reload, or before the dialog was closed without saving. */
  readonly restored?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <Form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        at.onSubmit();
      }}
    >
      {at.restored && <Notice>What you typed before is still here. Cancel forgets it.</Notice>}
      {at.children}
      <ErrorNotice error={at.error} title="Not saved" />
      <div className="row end">
        <Button onPress={at.onCancel}>Cancel</Button>
        <Button look="primary" type="submit" isPending={at.busy}>
          {at.save}
        </Button>
      </div>
    </Form>
  );
}
