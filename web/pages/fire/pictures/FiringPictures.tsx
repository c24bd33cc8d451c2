import { useState } from 'react';
import { Loaded } from '../../../parts/Loaded.tsx';
import { pictureUrl, usePictures } from '../../../queries/pictures.ts';
import { PictureDetails } from './PictureDetails.tsx';
import { altOf, SendPicture, Thumbs } from './PictureList.tsx';

/** Pictures of a firing: small ones side by side, one of them large. */
export function FiringPictures({
  study,
  firing,
  name,
}: {
  readonly study: string;
  readonly firing: string;
  readonly name: string;
}) {
  const of = { firing };
  const query = usePictures(study, of);
  const [chosen, setChosen] = useState<string | null>(null);
  return (
    <Loaded query={query} what="the pictures">
      {(pictures) => {
        const open = pictures.find((one) => one.id === chosen) ?? null;
        return (
          <div className="stack">
            {pictures.length > 0 && (
              <Thumbs
                {...{ study, pictures, chosen }}
                of={name}
                onChoose={(id) => setChosen(id === chosen ? null : id)}
              />
            )}
            {open && (
              <>
                <img className="picture-large" src={pictureUrl(study, open.id)} alt={altOf(open, name)} />
                <PictureDetails
                  key={open.id}
                  study={study}
                  picture={open}
                  lost="The picture will be lost; the firing stays."
                />
              </>
            )}
            <SendPicture study={study} of={of} name={name} />
          </div>
        );
      }}
    </Loaded>
  );
}
