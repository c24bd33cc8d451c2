import { useEffect, useState } from 'react';
import type { Sheet } from '../../../../api/contract/sheet.ts';
import { stageInWords } from '../../../../api/domain/firing/stages.ts';
import { AIRS, type Air } from '../../../../api/domain/firing/types.ts';
import { LitNow, PutRight } from './Lighting.tsx';
import { clockOf, hasRecord, hidingStage, minuteOf } from './overlay.ts';
import type { NewNote } from './useNotes.ts';

interface FireClockProps {
  readonly sheet: Sheet;
  readonly onNote: (note: NewNote, words: string) => void;
}

const AIR_WORDS: Readonly<Record<Air, string>> = {
  oxidising: 'open, clear flame',
  neutral: 'neither',
  reducing: 'smoky, short of air',
  smothered: 'covered up',
};

/** When it was lit, and which air it has had since: one tap each. */
export function FireClock({ sheet, onNote }: FireClockProps) {
  const { lit, air } = sheet;
  const now = useNow();
  const hiding = hidingStage(sheet, now);
  return (
    <section className="stack" aria-labelledby="clock">
      <h2 id="clock">The fire</h2>
      {lit === null ? (
        <LitNow asks={hasRecord(sheet)} onLit={() => onNote({ kind: 'lit' }, 'Lit')} />
      ) : (
        <p className="minute">
          <strong>Minute {minuteOf(lit, now) ?? 0}</strong>
          <span>lit at {clockOf(lit)}</span>
        </p>
      )}
      <PutRight lit={lit} onNote={onNote} />
      {lit === null ? (
        <p className="faint">Air can be noted once the time of lighting is.</p>
      ) : (
        <>
          <h3 id="air">Air now{air ? `: ${air.air} since ${clockOf(air.since)}` : ''}</h3>
          {hiding && (
            <p className="notice caution">
              At this time a stage written by hand stands: {stageInWords(hiding)}. It counts: what is tapped
              is kept, and no stage.
            </p>
          )}
          {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this grid in every browser */}
          <div className="big two" role="group" aria-labelledby="air">
            {AIRS.map((one) => (
              <button
                key={one}
                type="button"
                className="button plain"
                aria-pressed={air?.air === one}
                onClick={() => onNote({ kind: 'air', air: one }, `Air ${one}`)}
              >
                <span>{one}</span>
                <span className="small">{AIR_WORDS[one]}</span>
              </button>
            ))}
          </div>
          {air && (
            <button
              type="button"
              className="button plain giant"
              onClick={() => onNote({ kind: 'out' }, 'Fire out')}
            >
              The fire is out
            </button>
          )}
        </>
      )}
    </section>
  );
}

/** The instant, again every few seconds. */
function useNow(): string {
  const [now, setNow] = useState(() => new Date().toISOString());
  useEffect(() => {
    const tick = setInterval(() => setNow(new Date().toISOString()), 5_000);
    return () => clearInterval(tick);
  }, []);
  return now;
}
