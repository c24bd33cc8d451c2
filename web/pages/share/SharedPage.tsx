import { type ReactNode, Suspense } from 'react';
import type { Shared } from '../../../api/contract/shared.ts';
import { Loaded } from '../../parts/Loaded.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { messageOf, Refusal } from '../../problem.ts';
import { useShared } from '../../queries/shares.ts';
import { Comments } from './shared/Comments.tsx';
import { SharedThing } from './shared/SharedThing.tsx';

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
  const files = { address, talk: `/shared/${token}/talk` };
  if (shared.kind !== 'sheet')
    return (
      <SharedThing shared={shared} files={files}>
        {children}
      </SharedThing>
    );
  return (
    <PageHead
      title={shared.name}
      lead="This sheet is filled in at the fire."
      actions={
        // The sheet is another page, which opens without a network too: it is loaded, not just shown.
        <a className="button plain" href={`/shared/${token}/sheet`}>
          Open the sheet
        </a>
      }
    />
  );
}
