import { useState } from 'react';
import { Link } from 'wouter';
import type { Tile } from '../../../../api/contract/tile.ts';
import { placeInWords } from '../../../../api/domain/trials/place-words.ts';
import { Button, LinkButton } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { count } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import type { PageProps } from '../../../paths.ts';
import { useTiles } from '../../../queries/fire.ts';
import { pictureUrl } from '../../../queries/pictures.ts';
import { ZoneGrid } from '../parts/ZoneGrid.tsx';
import { firePath, tilePath } from '../paths.ts';
import { altOf } from '../pictures/PictureList.tsx';
import { NewTileDialog } from './NewTileDialog.tsx';

/** Every tile with its zones, as they lie on the table. */
export function TilesPage({ study }: PageProps) {
  const tiles = useTiles(study);
  const [adding, setAdding] = useState(false);
  const newTile = (
    <Button look="primary" onPress={() => setAdding(true)}>
      New tile
    </Button>
  );
  return (
    <>
      <PageHead
        title="Tiles"
        lead="Zone by zone: how thick the paint lay, and how it came out of the fire."
        actions={
          <>
            {newTile}
            <LinkButton to={firePath(study, '/mattered')}>See what mattered</LinkButton>
          </>
        }
      />
      <Loaded query={tiles} what="the tiles">
        {(rows) =>
          rows.length === 0 ? (
            <EmptyState
              title="No tiles yet"
              actions={<LinkButton to={firePath(study, '/plans/new')}>Plan a thickness ladder</LinkButton>}
            >
              <p>Lay a grid of zones on a replica, or plan a set of tiles and let it make them.</p>
            </EmptyState>
          ) : (
            <div className="tiles">
              {rows.map((tile) => (
                <TileCard key={tile.id} study={study} tile={tile} />
              ))}
            </div>
          )
        }
      </Loaded>
      <Cautions hazards={['fire', 'lead']} folded />
      <NewTileDialog study={study} open={adding} onClose={() => setAdding(false)} />
    </>
  );
}

function TileCard({ study, tile }: { readonly study: string; readonly tile: Tile }) {
  const glossy = tile.zones.filter((zone) => zone.grade === 'glossy').length;
  const [picture] = tile.pictures;
  const judged = tile.zones.filter((zone) => zone.grade !== null).length;
  return (
    <section className="sheet stack tight" aria-labelledby={`tile-${tile.id}`}>
      <h2 id={`tile-${tile.id}`} className="tile-name">
        <Link href={tilePath(study, tile.id)}>{tile.label}</Link>
      </h2>
      <p className="faint small">{aboutTile(tile)}</p>
      {picture && (
        <img
          className="tile-picture"
          src={pictureUrl(study, picture.id)}
          alt={altOf(picture, tile.label)}
          loading="lazy"
        />
      )}
      {tile.zones.length > 0 && <ZoneGrid tile={tile} />}
      <p className="small">
        {judged === 0
          ? 'Not judged yet'
          : `${glossy} of ${count(judged, 'zone')} glossy${judged < tile.zones.length ? `, ${tile.zones.length - judged} not judged` : ''}`}
      </p>
    </section>
  );
}

export function aboutTile(tile: Tile): string {
  const { firingName, batchName, settings } = tile;
  return [
    firingName ?? 'Not fired yet',
    placeInWords(tile),
    batchName ? `painted with ${batchName}` : '',
    ...Object.entries(settings).map(([name, value]) => `${name} ${value}`),
  ]
    .filter(Boolean)
    .join(' · ');
}
