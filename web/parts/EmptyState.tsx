import type { ReactNode } from 'react';

/** What to do where there is nothing yet. */
export function EmptyState(at: {
  readonly title: string;
  readonly children: ReactNode;
  readonly actions?: ReactNode;
}) {
  return (
    <div className="empty">
      <h2>{at.title}</h2>
      <div className="stack tight">{at.children}</div>
      {at.actions && <div className="row">{at.actions}</div>}
    </div>
  );
}
