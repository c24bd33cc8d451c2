import { useState } from 'react';
import type { Sheet } from '../../../../api/contract/sheet.ts';
import { GRADES, type Grade } from '../../../../api/domain/trials/types.ts';
import { Select } from '../../../parts/Select.tsx';
import { setInWords } from '../parts/ZoneGrid.tsx';
import { nextOpen, type ZoneAt } from './next-zone.ts';
import type { NewNote } from './useNotes.ts';

interface JudgeZoneProps {
  readonly tiles: Sheet['tiles'];
  readonly onNote: (note: NewNote, words: string) => void;
}

/** One zone after the other, three large buttons. */
export function JudgeZone({ tiles, onNote }: JudgeZoneProps) {
  const judged = tiles.filter((one) => one.zones.length > 0);
  const [first] = judged;
  // Kept from the start, so that a note from another phone never moves the zone under the finger.
  const [at, setAt] = useState<ZoneAt>(
    () => nextOpen(judged, null) ?? { tile: first!.id, zone: first!.zones[0]!.id },
  );
  const tile = judged.find((one) => one.id === at.tile) ?? first!;
  const zone = tile.zones.find((one) => one.id === at.zone) ?? tile.zones[0]!;
  const done = tile.zones.filter((one) => one.grade !== null).length;
  const all = judged.flatMap((one) => one.zones);
  const judge = (grade: Grade) => {
    const words = `${tile.label} ${zone.label} ${grade}`;
    const here = { tile: tile.id, zone: zone.id };
    onNote({ kind: 'judgement', ...here, grade }, words);
    setAt(nextOpen(judged, here) ?? here);
  };
  return (
    <section className="stack" aria-labelledby="judge">
      <h2 id="judge">Gloss, zone by zone</h2>
      <Select
        label="Tile"
        choices={judged.map((one) => ({ id: one.id, label: one.label }))}
        value={tile.id}
        onChange={(id) => {
          const { zones } = judged.find((one) => one.id === id)!;
          setAt({ tile: id, zone: (zones.find((one) => one.grade === null) ?? zones[0]!).id });
        }}
      />
      <Select
        label={`Zone (${done} of ${tile.zones.length} judged)`}
        choices={tile.zones.map((one) => ({
          id: one.id,
          label: `${one.label}: ${one.grade ?? 'not judged'}`,
          hint: setInWords(one),
        }))}
        value={zone.id}
        onChange={(id) => setAt({ tile: tile.id, zone: id })}
      />
      <p role="status">{all.every((one) => one.grade !== null) && `All ${all.length} zones are judged.`}</p>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this grid in every browser */}
      <div className="big three" role="group" aria-label={`Gloss of ${zone.label}`}>
        {GRADES.map((grade) => (
          <button
            key={grade}
            type="button"
            className="button plain"
            aria-pressed={zone.grade === grade}
            onClick={() => judge(grade)}
          >
            {grade}
          </button>
        ))}
      </div>
    </section>
  );
}
