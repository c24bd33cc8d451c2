import { useState } from 'react';
import { useLocation } from 'wouter';
import type { Tile } from '../../../../api/contract/tile.ts';
import { LinkButton } from '../../../parts/Button.tsx';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { count } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import { studyPath } from '../../../paths.ts';
import { useChangeTile, useDeleteTile, useTile } from '../../../queries/fire.ts';
import { ZoneGrid } from '../parts/ZoneGrid.tsx';
import { firePath } from '../paths.ts';
import { ColourTable } from '../pictures/ColourTable.tsx';
import { TilePictures } from '../pictures/TilePictures.tsx';
import { FiringPick, NO_FIRE } from './NewTileDialog.tsx';
import { PlaceField } from './PlaceField.tsx';
import { aboutTile } from './TilesPage.tsx';
import { ZoneDialog } from './ZoneDialog.tsx';
import { ZoneTable } from './ZoneTable.tsx';

interface TilePageProps {
  readonly study: string;
  readonly tile: string;
}

/** One tile, zone by zone. */
export function TilePage({ study, tile }: TilePageProps) {
  const query = useTile(study, tile);
  return (
    <Loaded query={query} what="the tile" page>
      {(found) => <TileView study={study} tile={found} />}
    </Loaded>
  );
}

function TileView({ study, tile }: { readonly study: string; readonly tile: Tile }) {
  const [open, setOpen] = useState<string | null>(null);
  const change = useChangeTile(study, tile.id);
  const zone = tile.zones.find((one) => one.id === open) ?? null;
  return (
    <>
      <PageHead
        title={tile.label}
        lead={aboutTile(tile)}
        up={{ to: firePath(study), label: 'Tiles' }}
        actions={<TileActions study={study} tile={tile} />}
      />
      {tile.notes && <p className="lines">{tile.notes}</p>}
      <section className="stack" aria-labelledby="zones">
        <h2 id="zones">Zones</h2>
        <p className="faint">
          {tile.zones.length === 0
            ? 'None yet: draw them on a picture.'
            : 'Choose a zone to write down what was put there and how it came out.'}
        </p>
        <div className="tile-large">
          <ZoneGrid tile={tile} onOpen={(one) => setOpen(one.id)} />
        </div>
        <div className="tile-firing">
          <FiringPick
            study={study}
            value={tile.firing ?? NO_FIRE}
            onChange={(id) => change.mutate({ firing: id === NO_FIRE ? null : id })}
          />
        </div>
        <div className="tile-firing">
          <PlaceField key={tile.place} study={study} tile={tile} />
        </div>
      </section>
      <TilePictures study={study} tile={tile} onOpen={setOpen} />
      <section className="stack" aria-labelledby="seen">
        <h2 id="seen">Zone by zone</h2>
        <ZoneTable study={study} tile={tile} />
      </section>
      <ColourTable tile={tile} />
      <ZoneDialog study={study} tile={tile} zone={zone} onClose={() => setOpen(null)} />
    </>
  );
}

function TileActions({ study, tile }: { readonly study: string; readonly tile: Tile }) {
  const remove = useDeleteTile(study);
  const [, navigate] = useLocation();
  return (
    <>
      <LinkButton to={studyPath(study, `/sherds/${tile.id}`)}>Its analyses</LinkButton>
      <ConfirmDelete
        label="Take the zones off"
        title={`Take the zones off ${tile.label}?`}
        lost={
          <p>
            Its {count(tile.zones.length, 'zone')}, {count(tile.pictures.length, 'picture')} and what was seen
            will be lost. The replica and its analyses stay.
          </p>
        }
        onDelete={async () => {
          navigate(firePath(study));
          await remove.mutateAsync(tile.id);
        }}
      />
    </>
  );
}
