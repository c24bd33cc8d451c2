import { Loaded } from '../../../parts/Loaded.tsx';
import { readDraft } from '../../../parts/useDraft.ts';
import type { PageProps } from '../../../paths.ts';
import { usePlacement } from '../../../queries/placements.ts';
import { keptPath } from '../../placement/paths.ts';
import { keptViewKey, type ViewState } from '../../placement/view-state.ts';
import { Talk } from './Talk.tsx';

/** A kept placement as a talk, of the replica that was last looked at. */
export function TalkPage({ study, placement }: PageProps & { readonly placement: string }) {
  const query = usePlacement(study, placement);
  const view = readDraft<ViewState>(keptViewKey(study, placement));
  return (
    <Loaded query={query} what="the placement" page>
      {(kept) => <Talk kept={kept} replica={view?.replica ?? null} back={keptPath(study, placement)} />}
    </Loaded>
  );
}
