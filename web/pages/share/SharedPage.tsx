import { LinkButton } from '../../parts/Button.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { messageOf, Refusal } from '../../problem.ts';
import { useShared } from '../../queries/shares.ts';
import { Comments } from './shared/Comments.tsx';
import { SharedPlacement } from './shared/SharedPlacement.tsx';

/** What somebody shared: to be read, not changed. */
export default function SharedPage({ token }: { readonly token: string }) {
  const query = useShared(token);
  if (query.error instanceof Refusal)
    return <PageHead title="Nothing to see here" lead={messageOf(query.error)} />;
  const address = `/api/shared/${encodeURIComponent(token)}`;
  return (
    <Loaded query={query} what="what was shared" page>
      {(shared) =>
        shared.kind === 'placement' ? (
          <SharedPlacement shared={shared} files={{ address, talk: `/shared/${token}/talk` }}>
            {shared.comments && <Comments token={token} shared={shared} />}
          </SharedPlacement>
        ) : (
          <PageHead
            title={shared.name}
            lead="This sheet is filled in at the fire."
            actions={<LinkButton to={`/shared/${token}/sheet`}>Open the sheet</LinkButton>}
          />
        )
      }
    </Loaded>
  );
}
