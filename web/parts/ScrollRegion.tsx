import type { ReactNode } from 'react';
import { useOverflows } from './useOverflows.ts';

/** Holds what may be wider than the page; named, and focusable just when it has something to scroll. */
export function ScrollRegion(at: {
  readonly label: string;
  readonly className?: string;
  readonly children: ReactNode;
}) {
  const { ref, overflows } = useOverflows<HTMLElement>();
  return (
    <section
      ref={ref}
      className={`scroll ${at.className ?? ''}`}
      aria-label={overflows ? `${at.label}, scrolls` : undefined}
      tabIndex={overflows ? 0 : undefined}
    >
      {at.children}
    </section>
  );
}
