import { Loaded } from '../../../parts/Loaded.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { messageOf, Refusal } from '../../../problem.ts';
import { useShared } from '../../../queries/shares.ts';
import { Talk } from './Talk.tsx';

/** What somebody shared, as a talk. */
export default function SharedTalk({ token }: { readonly token: string }) {
  const query = useShared(token);
  if (query.error instanceof Refusal)
    return <PageHead title="Nothing to see here" lead={messageOf(query.error)} />;
  return (
    <Loaded query={query} what="what was shared" page>
      {(shared) =>
        shared.kind === 'placement' ? (
          <Talk kept={shared.placement} replica={null} back={`/shared/${token}`} />
        ) : (
          <PageHead title="No talk here" lead="Only a placement can be shown as a talk." />
        )
      }
    </Loaded>
  );
}
