import { useState } from 'react';
import type { Tile } from '../../../../api/contract/tile.ts';
import { PictureDetails } from './PictureDetails.tsx';
import { SendPicture, Thumbs } from './PictureList.tsx';
import { PictureWork } from './PictureWork.tsx';

interface TilePicturesProps {
  readonly study: string;
  readonly tile: Tile;
  readonly onOpen: (zone: string) => void;
}

/** The pictures of a tile or pot, and the zones drawn on the one that is chosen. */
export function TilePictures({ study, tile, onOpen }: TilePicturesProps) {
  const [chosen, setChosen] = useState<string | null>(null);
  const { pictures } = tile;
  const picture = pictures.find((one) => one.id === chosen) ?? pictures[0] ?? null;
  const drawn = tile.zones.filter((zone) => picture && zone.picture === picture.id).length;
  return (
    <section className="stack" aria-labelledby="pictures">
      <h2 id="pictures">Pictures</h2>
      {pictures.length === 0 && (
        <p className="faint">
          Draw the zones on a picture. With a grey card in it, their colours can be measured.
        </p>
      )}
      {pictures.length > 1 && (
        <Thumbs {...{ study, pictures }} of={tile.label} chosen={picture?.id ?? null} onChoose={setChosen} />
      )}
      {picture && (
        <>
          <PictureWork key={picture.id} {...{ study, tile, picture, onOpen }} />
          <PictureDetails
            key={`words ${picture.id}`}
            study={study}
            picture={picture}
            lost={
              drawn === 0
                ? 'The picture will be lost.'
                : `The picture and the outlines of ${drawn} zones will be lost. The zones stay, with what was seen and measured of them.`
            }
          />
        </>
      )}
      <SendPicture study={study} of={{ tile: tile.id }} name={tile.label} />
    </section>
  );
}
