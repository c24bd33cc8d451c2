import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { FrozenPlacement } from '../../../api/contract/placement.ts';
import { Button } from '../../parts/Button.tsx';
import { ConfirmDelete } from '../../parts/ConfirmDelete.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { keepDraft, useDraft } from '../../parts/useDraft.ts';
import { useDeletePlacement, usePlacement, useRenamePlacement } from '../../queries/placements.ts';
import { KeptWords } from '../share/KeptWords.tsx';
import { specimenPath } from '../sherds/paths.ts';
import { KeepDialog } from './KeepDialog.tsx';
import { placementPath } from './paths.ts';
import { ResultsHead, ResultsRest } from './Results.tsx';
import { settingsKey, settingsOf } from './settings.ts';
import { restoreSlip } from './slip/choices.ts';
import { FIRST_VIEW, keptViewKey, type ViewState } from './view-state.ts';
import { day } from './words.ts';

interface KeptProps {
  readonly study: string;
  readonly placement: string;
}

/** A placement as it was kept: the same look, but nothing in it changes any more. */
export function KeptPage({ study, placement }: KeptProps) {
  const query = usePlacement(study, placement);
  return (
    <Loaded query={query} what="the placement">
      {(kept) => <Kept study={study} kept={kept} />}
    </Loaded>
  );
}

function Kept({ study, kept }: { readonly study: string; readonly kept: FrozenPlacement }) {
  const view = useDraft<ViewState>(keptViewKey(study, kept.id), FIRST_VIEW);
  const onView = (part: Partial<ViewState>) => view.set({ ...view.value, ...part });
  const shown = { study, result: kept.result, view: view.value, onView };
  const openSherd = (specimen: string, label: string) => (
    <Link href={specimenPath(study, specimen)}>Open {label} as it is now</Link>
  );
  return (
    <>
      <PageHead
        title={kept.name}
        lead={kept.note}
        up={{ to: placementPath(study), label: 'Placement' }}
        actions={<KeptActions study={study} kept={kept} />}
      />
      <Notice>
        <p>
          Kept on {day(kept.createdAt)} by version {kept.version}. What has changed in the study since does
          not touch it.
        </p>
      </Notice>
      <div className="placing-head">
        <ResultsHead {...shown} />
      </div>
      <div className="placing-rest">
        <ResultsRest {...shown} sherdActions={openSherd} />
        <KeptWords study={study} placement={kept.id} view={view.value} />
      </div>
    </>
  );
}

function KeptActions({ study, kept }: { readonly study: string; readonly kept: FrozenPlacement }) {
  const [renaming, setRenaming] = useState(false);
  const rename = useRenamePlacement(study, kept.id);
  const remove = useDeletePlacement(study);
  const [, navigate] = useLocation();
  const again = () => {
    const labels = new Map(kept.result.excluded.map(({ specimen, label }) => [specimen, label]));
    keepDraft(
      settingsKey(study),
      settingsOf(kept.result.request, (id) => labels.get(id) ?? id),
    );
    restoreSlip(study, kept.result);
    navigate(placementPath(study));
  };
  return (
    <>
      <Button onPress={again}>Compare again</Button>
      <Button onPress={() => setRenaming(true)}>Change</Button>
      <ConfirmDelete
        label="Delete"
        title={`Delete “${kept.name}”?`}
        lost={<p>The kept numbers go; the sherds and replicas stay in the study.</p>}
        onDelete={async () => {
          await remove.mutateAsync(kept.id);
          navigate(placementPath(study));
        }}
      />
      {renaming && (
        <KeepDialog
          title="Change name or note"
          start={kept}
          action="Save"
          open
          onClose={() => setRenaming(false)}
          onKeep={(naming) => rename.mutateAsync(naming)}
        />
      )}
    </>
  );
}
