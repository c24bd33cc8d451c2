import type { ReactNode } from 'react';
import { LinkButton } from '../parts/Button.tsx';
import { Loaded } from '../parts/Loaded.tsx';
import { PageHead } from '../parts/PageHead.tsx';
import { Refusal } from '../problem.ts';
import { useStudy } from '../queries/studies.ts';

/** Lets a page through only when its study is there. */
export function StudyGate({ study, children }: { readonly study: string; readonly children: ReactNode }) {
  const query = useStudy(study);
  const gone = query.error instanceof Refusal && [400, 404, 422].includes(query.error.status);
  if (gone)
    return (
      <PageHead
        title="This study is not here"
        lead="It may have been deleted, or the address belongs to another machine’s service."
        actions={<LinkButton to="/">All studies</LinkButton>}
      />
    );
  return (
    <Loaded query={query} what="the study" page>
      {() => children}
    </Loaded>
  );
}
