import { lazy, type ReactNode, Suspense } from 'react';
import type { Shared } from '../../../api/contract/shared.ts';
import { LinkButton } from '../../parts/Button.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { messageOf, Refusal } from '../../problem.ts';
import { useShared } from '../../queries/shares.ts';
import { Comments } from './shared/Comments.tsx';
import { SharedPlacement } from './shared/SharedPlacement.tsx';

const SharedOutcome = lazy(() => import('./shared/SharedOutcome.tsx'));
const SharedBench = lazy(() => import('./shared/SharedBench.tsx'));

/** What somebody shared: to be read, not changed. */
export default function SharedPage({ token }: { readonly token: string }) {
  const query = useShared(token);
  if (query.error instanceof Refusal)
    return <PageHead title="Nothing to see here" lead={messageOf(query.error)} />;
  return (
    <Loaded query={query} what="what was shared" page>
      {(shared) => (
        <Suspense fallback={<p role="status">Opening …</p>}>
          <OfKind token={token} shared={shared}>
            {shared.comments && <Comments token={token} shared={shared} />}
          </OfKind>
        </Suspense>
      )}
    </Loaded>
  );
}

function OfKind(at: { readonly token: string; readonly shared: Shared; readonly children: ReactNode }) {
  const { token, shared, children } = at;
  const address = `/api/shared/${encodeURIComponent(token)}`;
  switch (shared.kind) {
    case 'placement':
      return (
        <SharedPlacement shared={shared} files={{ address, talk: `/shared/${token}/talk` }}>
          {children}
        </SharedPlacement>
      );
    case 'outcome':
      return <SharedOutcome shared={shared}>{children}</SharedOutcome>;
    case 'bench':
      return <SharedBench shared={shared}>{children}</SharedBench>;
    case 'sheet':
      return (
        <PageHead
          title={shared.name}
          lead="This sheet is filled in at the fire."
          actions={<LinkButton to={`/shared/${token}/sheet`}>Open the sheet</LinkButton>}
        />
      );
  }
}
