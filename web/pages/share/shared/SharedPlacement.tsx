import { type ReactNode, useState } from 'react';
import { LinkButton } from '../../../parts/Button.tsx';
import { FirstWithout } from '../../../parts/FirstWithout.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { ResultsHead, ResultsRest } from '../../placement/Results.tsx';
import { FIRST_VIEW, type ViewState } from '../../placement/view-state.ts';
import { FigureFiles } from '../FigureFiles.tsx';
import { Words } from '../Words.tsx';
import { DataFiles, figuresFrom, type OfShare } from './DataFiles.tsx';
import { SharedNotice } from './SharedNotice.tsx';
import { TriedNotice } from './TriedNotice.tsx';
import { TriedSlip } from './TriedSlip.tsx';
import { useTried } from './tried.ts';
import '../../placement/placement.css';
import '../../placement/slip/slip.css';

export interface SharedPlacementProps extends OfShare<'placement'> {
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
      <SharedNotice {...placement} expiresAt={shared.expiresAt} />
      <div className="placing-head">
        <TriedNotice tried={tried} kept={keptSentence} />
        <ResultsHead {...shown} />
      </div>
      <div className="placing-rest">
        <ResultsRest {...shown} slipPanel={TriedSlip} sherdActions={() => null} />
        <FirstWithout>
          <FigureFiles from={figuresFrom(files)} view={view} />
          <DataFiles shared={shared} files={files} />
          <Words text={text} />
          {children}
        </FirstWithout>
      </div>
    </>
  );
}
