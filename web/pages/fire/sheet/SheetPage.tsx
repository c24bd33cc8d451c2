import { useState } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import type { Tile } from '../../../../api/contract/tile.ts';
import { Button } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { count } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Select } from '../../../parts/Select.tsx';
import type { PageProps } from '../../../paths.ts';
import { useFirings, useTiles } from '../../../queries/fire.ts';
import { JudgeZone } from './JudgeZone.tsx';
import { TakeReading } from './TakeReading.tsx';
import { useWaiting } from './useWaiting.ts';

/** The sheet that is filled in by phone at the fire. */
export function SheetPage({ study }: PageProps) {
  const firings = useFirings(study);
  const tiles = useTiles(study);
  return (
    <>
      <PageHead
        title="At the fire"
        lead="Large targets, one thing at a time. What you note is kept on this device and sent when the service answers."
      />
      <Notice>
        Open this page before you walk out of reach, and keep it open: without the service a closed page
        cannot be opened again, though nothing noted is lost.
      </Notice>
      <Loaded query={firings} what="the firings">
        {(fires) => (
          <Loaded query={tiles} what="the tiles">
            {(all) =>
              fires.length === 0 ? (
                <EmptyState title="No firing to note things for">
                  <p>Record the firing first, under Firings.</p>
                </EmptyState>
              ) : (
                <Sheet study={study} firings={fires} tiles={all} />
              )
            }
          </Loaded>
        )}
      </Loaded>
      <Cautions hazards={['fire', 'lead']} />
    </>
  );
}

interface SheetProps {
  readonly study: string;
  readonly firings: readonly FiringRecord[];
  readonly tiles: readonly Tile[];
}

function Sheet({ study, firings, tiles }: SheetProps) {
  const [picked, setPicked] = useState<string | null>(null);
  const { waiting, refused, add, drop, flush } = useWaiting(study);
  const firing = firings.find((one) => one.id === picked) ?? firings.at(-1)!;
  const here = tiles.filter((tile) => tile.firing === firing.id);
  return (
    <div className="at-fire">
      <p role="status">
        {waiting.length === 0
          ? 'Everything noted has been sent.'
          : `${count(waiting.length, 'note')} waiting on this device: ${waiting.map((one) => one.words).join('; ')}.`}
      </p>
      {refused && (
        <>
          <ErrorNotice error={refused.error} title="The service refuses a note" />
          <Button onPress={() => drop(refused.id)}>Throw that note away</Button>
        </>
      )}
      {waiting.length > 0 && <Button onPress={flush}>Try to send now</Button>}
      <Select
        label="Firing"
        choices={firings.map((one) => ({ id: one.id, label: one.name }))}
        value={firing.id}
        onChange={setPicked}
      />
      <TakeReading key={`r ${firing.id}`} study={study} firing={firing} onNote={add} />
      {here.length > 0 ? (
        <JudgeZone key={firing.id} study={study} tiles={here} onNote={add} />
      ) : (
        <p className="faint">No tile stands in this firing.</p>
      )}
    </div>
  );
}
