import { useState } from 'react';
import type { Sheet } from '../../../../api/contract/sheet.ts';
import { GRADES, type Grade } from '../../../../api/domain/trials/types.ts';
import { Select } from '../../../parts/Select.tsx';
import { setInWords } from '../parts/ZoneGrid.tsx';
import type { NewNote } from './useNotes.ts';

interface JudgeZoneProps {
  readonly tiles: Sheet['tiles'];
  readonly onNote: (note: NewNote, words: string) => void;
}

/** One zone after the other, three large buttons. */
export function JudgeZone({ tiles, onNote }: JudgeZoneProps) {
  const judged = tiles.filter((one) => one.zones.length > 0);
  const [tileId, setTile] = useState<string | null>(null);
  const [zoneId, setZone] = useState<string | null>(null);
  const tile = judged.find((one) => one.id === tileId) ?? judged[0]!;
  const zone = tile.zones.find((one) => one.id === zoneId) ?? tile.zones[0]!;
  const done = tile.zones.filter((one) => one.grade !== null).length;
  const judge = (grade: Grade) => {
    const words = `${tile.label} ${zone.label} ${grade}`;
    onNote({ kind: 'judgement', tile: tile.id, zone: zone.id, grade }, words);
    const next = tile.zones[tile.zones.indexOf(zone) + 1];
    if (next) setZone(next.id);
  };
  return (
    <section className="stack" aria-labelledby="judge">
      <h2 id="judge">Gloss, zone by zone</h2>
      <Select
        label="Tile"
        choices={judged.map((one) => ({ id: one.id, label: one.label }))}
        value={tile.id}
        onChange={(id) => {
          setTile(id);
          setZone(null);
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
        onChange={setZone}
      />
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
