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
import { TriedNotice } from './TriedNotice.tsx';
import { TriedSlip } from './TriedSlip.tsx';
import { useTried } from './tried.ts';
import '../../placement/placement.css';
import '../../placement/slip/slip.css';

const TABLES = ['placements', 'contributions', 'scores', 'loadings', 'members', 'excluded'] as const;

export interface SharedPlacementProps {
  readonly shared: SharedOf<'placement'>;
  /** Where its files are to be had. */
  readonly files: { readonly address: string };
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
  const talk = files.address.replace('/api', '');
  return (
    <>
      <PageHead
        title={placement.name}
        lead={placement.note}
        actions={<LinkButton to={`${talk}/talk`}>Show it as a talk</LinkButton>}
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
        <FigureFiles from={{ address: files.address }} view={view} />
        <section className="stack" aria-labelledby="tables-heading">
          <h2 id="tables-heading">Data as files</h2>
          <p className="faint">As kept, whatever is tried above.</p>
          <div className="row">
            {shared.bundled && (
              <a className="button" href={`${files.address}/bundle.zip`} download>
                Everything as one zip
              </a>
            )}
            {TABLES.map((table) => (
              <a key={table} className="button quiet" href={`${files.address}/tables/${table}`} download>
                {table}
              </a>
            ))}
          </div>
        </section>
        <Words text={text} />
        {children}
      </div>
    </>
  );
}
