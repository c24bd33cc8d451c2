import { type ReactNode, useState } from 'react';
import type { SharedOf } from '../../../../api/contract/shared.ts';
import { LinkButton } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { ResultsHead, ResultsRest } from '../../placement/Results.tsx';
import { FIRST_VIEW, type ViewState } from '../../placement/view-state.ts';
import { day } from '../../placement/words.ts';
import { FigureFiles } from '../FigureFiles.tsx';
import { Words } from '../Words.tsx';
import { DataFiles, type FilesOfShare } from './DataFiles.tsx';
import { TriedNotice } from './TriedNotice.tsx';
import { TriedSlip } from './TriedSlip.tsx';
import { useTried } from './tried.ts';
import '../../placement/placement.css';
import '../../placement/slip/slip.css';

export interface SharedPlacementProps {
  readonly shared: SharedOf<'placement'>;
  readonly files: FilesOfShare;
  readonly children?: ReactNode;
}

/** A placement as somebody shared it, and what a visitor may try on it. */
export function SharedPlacement({ shared, files, children }: SharedPlacementProps) {
  const [view, setView] = useState<ViewState>(FIRST_VIEW);
  const onView = (part: Partial<ViewState>) => setView((now) => ({ ...now, ...part }));
  const { placement, text } = shared;
  const tried = useTried(shared, view.against);
  const chosen = placement.result.placements.find(({ id }) => id === view.replica);
  const keptSentence = (chosen ?? placement.result.placements[0])?.sentence;
  const result = tried?.result ?? placement.result;
  const shown = { study: null, result, view, onView, slip: tried?.slip };
  return (
    <>
      <PageHead
        title={placement.name}
        lead={placement.note}
        actions={<LinkButton to={files.talk}>Show it as a talk</LinkButton>}
      />
      <Notice>
        <p>
          Shared with you to read. Computed on {day(placement.createdAt)} by version {placement.version} and
          frozen since.
          {shared.expiresAt && ` It can be opened until ${day(shared.expiresAt)}.`}
        </p>
      </Notice>
      <div className="placing-head">
        <TriedNotice tried={tried} kept={keptSentence} />
        <ResultsHead {...shown} />
      </div>
      <div className="placing-rest">
        <ResultsRest {...shown} slipPanel={TriedSlip} sherdActions={() => null} />
        {'address' in files && <FigureFiles from={{ address: files.address }} view={view} />}
        <DataFiles shared={shared} files={files} />
        <Words text={text} />
        {children}
      </div>
    </>
  );
}
