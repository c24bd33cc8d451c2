import { useState } from 'react';
import type { Tile } from '../../../../api/contract/tile.ts';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { useChangeTile } from '../../../queries/fire.ts';

/** Where the tile stood, kept when the field is left: a factor like any other, unlike the plan's place number. */
export function PlaceField({ study, tile }: { readonly study: string; readonly tile: Tile }) {
  const change = useChangeTile(study, tile.id);
  const [place, setPlace] = useState(tile.place);
  const { position } = tile;
  return (
    <>
      <Field
        label="Place in the fire"
        hint={
          position === null
            ? 'In your words, such as front'
            : `In your words, such as front; the plan drew place ${position} for it by lot`
        }
        value={place}
        onChange={setPlace}
        onBlur={() => place.trim() !== tile.place && change.mutate({ place: place.trim() })}
      />
      <ErrorNotice error={change.error} title="Not kept" />
    </>
  );
}
