import type { ReactNode } from 'react';
import { LinkButton } from '../parts/Button.tsx';
import { EmptyState } from '../parts/EmptyState.tsx';
import { Loaded } from '../parts/Loaded.tsx';
import { Refusal } from '../problem.ts';
import { useStudy } from '../queries/studies.ts';

/** Lets a page through only when its study is there. */
export function StudyGate({ study, children }: { readonly study: string; readonly children: ReactNode }) {
  const query = useStudy(study);
  const gone = query.error instanceof Refusal && [400, 404, 422].includes(query.error.status);
  if (gone)
    return (
      <EmptyState title="This study is not here" actions={<LinkButton to="/">All studies</LinkButton>}>
        <p>It may have been deleted, or the address belongs to another machine's service.</p>
      </EmptyState>
    );
  return (
    <Loaded query={query} what="the study">
      {() => children}
    </Loaded>
  );
}
