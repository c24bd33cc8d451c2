import { type ReactNode, useContext } from 'react';
import { Button, Disclosure, DisclosurePanel, DisclosureStateContext, Heading } from 'react-aria-components';
import { Caret } from '../../../parts/icons.tsx';

/** Something a step behind: its heading opens it. */
export function Fold(at: {
  readonly title: string;
  /** What is inside in a word or two, shown while it is closed. */
  readonly gist?: ReactNode;
  readonly level?: 2 | 3;
  readonly open?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <Disclosure className="fold" defaultExpanded={at.open ?? false}>
      <Heading level={at.level ?? 3}>
        <Button slot="trigger" className="fold-trigger">
          <Caret />
          <span>{at.title}</span>
          {at.gist && <span className="fold-gist">{at.gist}</span>}
        </Button>
      </Heading>
      <DisclosurePanel className="fold-panel">
        <div className="stack">{at.children}</div>
      </DisclosurePanel>
    </Disclosure>
  );
}

/** Works nothing out and asks nothing of the service until its fold is open. */
export function Opened({ children }: { readonly children: ReactNode }) {
  return useContext(DisclosureStateContext)?.isExpanded ? children : null;
}
