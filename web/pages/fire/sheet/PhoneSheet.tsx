import { useEffect, useState } from 'react';
import { keepSheetFiles, type Readiness } from '../../../offline/register.ts';
import { Cautions } from '../../../parts/Cautions.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { firePath } from '../paths.ts';
import { apiPath, type SheetAddress } from './address.ts';
import { FireClock } from './FireClock.tsx';
import { JudgeZone } from './JudgeZone.tsx';
import { NotedList } from './NotedList.tsx';
import { withWaiting } from './overlay.ts';
import { SendState } from './SendState.tsx';
import { Standing } from './Standing.tsx';
import { TakePicture } from './TakePicture.tsx';
import { TakeReading } from './TakeReading.tsx';
import { useNotes } from './useNotes.ts';
import { type SheetState, useSheet } from './useSheet.ts';
import './sheet.css';

/** The sheet that is filled in by phone at the fire; the same for a firing of a study and for a link to one. */
export default function PhoneSheet({ address }: { readonly address: SheetAddress }) {
  const path = apiPath(address);
  const { hear, look: _, ...state } = useSheet(path);
  const { notes, add, drop, flush } = useNotes(path, hear);
  const kept = useKeptFiles();
  const sheet = state.sheet && withWaiting(state.sheet, notes);
  const up =
    address.kind === 'study' ? { up: { to: firePath(address.study, '/sheet'), label: 'At the fire' } } : {};
  return (
    <div className="phone">
      <PageHead title={sheet ? sheet.firing.name : 'At the fire'} {...up} />
      <SendState notes={notes} state={state} kept={kept} onSend={flush} onDrop={drop} />
      {sheet ? (
        <>
          <FireClock sheet={sheet} onNote={add} />
          <Standing tiles={sheet.tiles} />
          <TakeReading lit={sheet.lit} onNote={add} />
          {sheet.tiles.some((tile) => tile.zones.length > 0) ? (
            <JudgeZone tiles={sheet.tiles} onNote={add} />
          ) : (
            <p className="faint">No tile with zones stands in this firing, so there is no gloss to judge.</p>
          )}
          <TakePicture tiles={sheet.tiles} onNote={add} />
          <NotedList sheet={sheet} notes={notes} />
        </>
      ) : (
        <NothingYet state={state} />
      )}
      <Cautions hazards={['fire', 'lead']} folded />
    </div>
  );
}

function NothingYet({ state }: { readonly state: SheetState }) {
  if (state.error === null)
    return (
      <p className="waiting" role="status">
        Reading the sheet …
      </p>
    );
  return (
    <EmptyState title="This sheet cannot be shown">
      <ErrorNotice error={state.error} />
      <p>
        It opens without a network once it has been opened with one on this phone. Notes taken earlier are
        still on the phone.
      </p>
    </EmptyState>
  );
}

function useKeptFiles(): Readiness | null {
  const [kept, setKept] = useState<Readiness | null>(null);
  useEffect(() => {
    keepSheetFiles().then(setKept);
  }, []);
  return kept;
}
