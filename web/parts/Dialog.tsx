import type { ReactNode } from 'react';
import { Heading, Modal, ModalOverlay, Dialog as Pane } from 'react-aria-components';

export interface DialogProps {
  readonly title: string;
  readonly open: boolean;
  readonly onClose: () => void;
  readonly role?: 'dialog' | 'alertdialog';
  readonly children: ReactNode;
}

/** A pane over the page. Escape closes it; focus goes back to what opened it. */
export function Dialog({ title, open, onClose, role = 'dialog', children }: DialogProps) {
  return (
    <ModalOverlay
      className="veil"
      isOpen={open}
      onOpenChange={(isOpen) => !isOpen && onClose()}
      isDismissable={role === 'dialog'}
    >
      <Modal className="modal">
        <Pane className="dialog" role={role}>
          <Heading slot="title" level={2}>
            {title}
          </Heading>
          {children}
        </Pane>
      </Modal>
    </ModalOverlay>
  );
}
