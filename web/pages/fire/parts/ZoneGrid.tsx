import type { Tile, ZoneRecord } from '../../../../api/contract/tile.ts';

/** A tile as it lies on the table: each zone in its place, those only drawn after them, with what came of it. */
export function ZoneGrid(at: {
  readonly tile: Pick<Tile, 'label' | 'rows' | 'columns' | 'zones'>;
  readonly onOpen?: (zone: ZoneRecord) => void;
}) {
  const { tile, onOpen } = at;
  return (
    <ul
      className="zone-grid"
      aria-label={`Zones of ${tile.label}`}
      style={{ gridTemplateColumns: `repeat(${tile.columns || 3}, minmax(0, 1fr))` }}
    >
      {tile.zones.map((zone) => (
        <li key={zone.id} style={{ gridRow: zone.row ?? 'auto', gridColumn: zone.column ?? 'auto' }}>
          {onOpen ? (
            <button type="button" className={`zone ${zone.grade ?? 'open'}`} onClick={() => onOpen(zone)}>
              <ZoneWords zone={zone} />
            </button>
          ) : (
            <div className={`zone ${zone.grade ?? 'open'}`}>
              <ZoneWords zone={zone} />
            </div>
          )}
        </li>
      ))}
    </ul>
  );
}

function ZoneWords({ zone }: { readonly zone: ZoneRecord }) {
  return (
    <>
      <strong>{zone.label}</strong>
      <span>{zone.grade ?? 'not judged'}</span>
      <span className="small">{setInWords(zone)}</span>
    </>
  );
}

/** `3 coats, 50 µm, air open`. */
export function setInWords({
  coats,
  micrometres,
  settings,
}: Pick<ZoneRecord, 'coats' | 'micrometres' | 'settings'>): string {
  return [
    ...(coats === null ? [] : [`${coats} ${coats === 1 ? 'coat' : 'coats'}`]),
    ...(micrometres === null ? [] : [`${micrometres} µm`]),
    ...Object.entries(settings).map(([name, value]) => `${name} ${value}`),
  ].join(', ');
}
