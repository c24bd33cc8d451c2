import { useState } from 'react';
import type { Tile } from '../../../../api/contract/tile.ts';
import { GRADES, type Grade } from '../../../../api/domain/trials/types.ts';
import { Select } from '../../../parts/Select.tsx';
import { setInWords } from '../parts/ZoneGrid.tsx';
import type { Note } from './waiting.ts';

interface JudgeZoneProps {
  readonly study: string;
  readonly tiles: readonly Tile[];
  readonly onNote: (note: Note) => void;
}

/** One zone after the other, three large buttons. */
export function JudgeZone({ study, tiles, onNote }: JudgeZoneProps) {
  const [tileId, setTile] = useState(tiles[0]!.id);
  const tile = tiles.find((one) => one.id === tileId) ?? tiles[0]!;
  const [zoneId, setZone] = useState<string | null>(null);
  const [given, setGiven] = useState<Readonly<Record<string, Grade>>>({});
  const zone = tile.zones.find((one) => one.id === zoneId) ?? tile.zones[0];
  if (!zone) return <p className="faint">{tile.label} has no zones.</p>;
  const now = given[zone.id] ?? zone.grade;
  const judge = (grade: Grade) => {
    setGiven({ ...given, [zone.id]: grade });
    const words = `${tile.label} ${zone.label} ${grade}`;
    onNote({ kind: 'zone', study, tile: tile.id, zone: zone.id, change: { grade }, words });
    const next = tile.zones[tile.zones.indexOf(zone) + 1];
    if (next) setZone(next.id);
  };
  return (
    <section className="stack" aria-labelledby="judge">
      <h2 id="judge">Gloss, zone by zone</h2>
      <Select
        label="Tile"
        choices={tiles.map((one) => ({ id: one.id, label: one.label }))}
        value={tile.id}
        onChange={(id) => {
          setTile(id);
          setZone(null);
        }}
      />
      <Select
        label="Zone"
        choices={tile.zones.map((one) => ({
          id: one.id,
          label: `${one.label}: ${given[one.id] ?? one.grade ?? 'not judged'}`,
          hint: setInWords(one),
        }))}
        value={zone.id}
        onChange={setZone}
      />
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this grid in every browser */}
      <div className="big-choice" role="group" aria-label={`Gloss of ${zone.label}`}>
        {GRADES.map((grade) => (
          <button
            key={grade}
            type="button"
            className="button plain"
            aria-pressed={now === grade}
            onClick={() => judge(grade)}
          >
            {grade}
          </button>
        ))}
      </div>
    </section>
  );
}
