import type { FiringRecord } from '../../../../api/contract/firing.ts';
import type { Tile, ZoneRecord } from '../../../../api/contract/tile.ts';
import { FIRST_RULE } from '../../../../api/domain/batch/safety.ts';
import { placeInWords } from '../../../../api/domain/trials/place-words.ts';
import { GRADES } from '../../../../api/domain/trials/types.ts';
import { setInWords } from '../parts/ZoneGrid.tsx';

/** The same sheet on paper, for pencil and soot: seen in print only. */
export function PaperSheet({
  firing,
  tiles,
}: {
  readonly firing: FiringRecord;
  readonly tiles: readonly Tile[];
}) {
  return (
    <div className="paper">
      <h1>{firing.name}</h1>
      <p className="blanks">
        <Blank label="Day" value={firing.date ?? ''} />
        <Blank label="Place" value={firing.place} />
        <Blank label="Fuel" value={firing.fuel} />
        <Blank label="Weather" value={firing.weather} />
        <Blank label="Lit at" value="" />
        <Blank label="Out at" value="" />
        <Blank label="Read by (type, class)" value="" />
      </p>
      <div className="halves">
        <Lines
          caption="Air: oxidising, neutral, reducing, smothered"
          columns={['Time', 'Air now']}
          rows={6}
        />
        <Lines caption="Readings" columns={['Time', '°C shown', 'Where']} rows={14} />
      </div>
      {tiles.map((tile) => (
        <PaperTile key={tile.id} tile={tile} />
      ))}
      <p className="small">{FIRST_RULE}</p>
    </div>
  );
}

function Blank({ label, value }: { readonly label: string; readonly value: string }) {
  return (
    <span>
      {label}: <span className="blank">{value}</span>
    </span>
  );
}

function Lines(at: { readonly caption: string; readonly columns: readonly string[]; readonly rows: number }) {
  const lines = Array.from({ length: at.rows }, (_, i) => i);
  return (
    <table>
      <caption>{at.caption}</caption>
      <thead>
        <tr>
          {at.columns.map((one) => (
            <th key={one} scope="col">
              {one}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line}>
            {at.columns.map((one) => (
              <td key={one} />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Zones where they lie on the tile; those drawn on a picture, which have no place in a grid, after them. */
function PaperTile({ tile }: { readonly tile: Tile }) {
  const inGrid = tile.zones.filter((zone) => zone.row !== null && zone.column !== null);
  const drawn = tile.zones.filter((zone) => !inGrid.includes(zone));
  const place = placeInWords(tile);
  return (
    <section className="paper-tile">
      <h2>
        {tile.label}
        {place && `, ${place}`}
      </h2>
      {inGrid.length > 0 && (
        <ul
          className="zone-grid"
          style={{ gridTemplateColumns: `repeat(${Math.max(1, tile.columns)}, minmax(0, 1fr))` }}
        >
          {inGrid.map((zone) => (
            <li key={zone.id} style={{ gridRow: zone.row!, gridColumn: zone.column! }}>
              <PaperZone zone={zone} />
            </li>
          ))}
        </ul>
      )}
      {drawn.length > 0 && (
        <ul className="zone-grid three">
          {drawn.map((zone) => (
            <li key={zone.id}>
              <PaperZone zone={zone} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function PaperZone({ zone }: { readonly zone: ZoneRecord }) {
  return (
    <div className="zone">
      <strong>{zone.label}</strong>
      <span className="small">{setInWords(zone)}</span>
      {GRADES.map((grade) => (
        <span key={grade}>☐ {grade}</span>
      ))}
    </div>
  );
}
