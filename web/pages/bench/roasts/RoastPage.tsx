import { useLocation } from 'wouter';
import type { StoredRoast } from '../../../../api/contract/roast.ts';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useDeleteRoast } from '../../../queries/bench.ts';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { benchPath } from '../paths.ts';
import { RoastEditor } from './RoastEditor.tsx';
import { BLANK_ROAST, formOfRoast } from './roast-form.ts';

interface RoastPageProps {
  readonly study: string;
  /** The roast to change; null for a new one. */
  readonly roast: string | null;
}

export function RoastPage({ study, roast: id }: RoastPageProps) {
  return (
    <WithShelf study={study}>
      {(bench) => {
        const roast = bench.roasts.find((one) => one.id === id) ?? null;
        if (id === null || roast)
          return <OneRoast key={roast?.updatedAt} study={study} bench={bench} roast={roast} />;
        const up = { to: benchPath(study, '/roasts'), label: 'Roasts' };
        return <PageHead title="This roast is not here" lead="It may have been deleted." up={up} />;
      }}
    </WithShelf>
  );
}

function OneRoast(at: { readonly study: string; readonly bench: Bench; readonly roast: StoredRoast | null }) {
  const { study, bench, roast } = at;
  const [, navigate] = useLocation();
  const remove = useDeleteRoast(study);
  const draft = useDraft(`roast.${study}.${roast?.id ?? 'new'}`, roast ? formOfRoast(roast) : BLANK_ROAST);
  const fault = roast && bench.shelf.faults[roast.id];
  const back = benchPath(study, '/roasts');
  return (
    <>
      <PageHead
        title={roast ? roast.name : 'New roast'}
        up={{ to: back, label: 'Roasts' }}
        lead="Weigh the charge before and after: the balance of mass tells what can be in it."
        actions={
          roast && (
            <ConfirmDelete
              label="Delete this roast"
              title={`Delete ${roast.name}?`}
              lost={<p>It can be deleted once nothing is weighed from it. This cannot be undone.</p>}
              onDelete={async () => {
                await remove.mutateAsync(roast.id);
                navigate(back);
              }}
            />
          )
        }
      />
      {fault && (
        <Notice kind="error" title="This charge cannot be used as it stands">
          <p>{fault}</p>
        </Notice>
      )}
      <RoastEditor
        study={study}
        bench={bench}
        roast={roast}
        draft={draft}
        onSaved={() => {
          draft.clear();
          navigate(back);
        }}
      />
    </>
  );
}
