import { useState } from 'react';
import type { Sheet } from '../../../../api/contract/sheet.ts';
import { Select } from '../../../parts/Select.tsx';
import { readyToSend } from '../pictures/shrink.ts';
import type { NewNote } from './useNotes.ts';

const FIRE = 'fire';

/** A picture with the phone's camera, of the fire or of one tile; made smaller before it waits or is sent. */
export function TakePicture(at: {
  readonly tiles: Sheet['tiles'];
  readonly onNote: (note: NewNote, words: string) => void;
}) {
  const [of, setOf] = useState(FIRE);
  const [busy, setBusy] = useState(false);
  const tile = at.tiles.find((one) => one.id === of);
  const take = async (file: File) => {
    setBusy(true);
    try {
      const ready = await readyToSend(file);
      const words = `Picture of ${tile ? tile.label : 'the fire'}`;
      at.onNote({ kind: 'picture', tile: tile?.id ?? null, file: ready.file }, words);
    } finally {
      setBusy(false);
    }
  };
  return (
    <section className="stack" aria-labelledby="picture">
      <h2 id="picture">A picture</h2>
      {at.tiles.length > 0 && (
        <Select
          label="Of"
          choices={[
            { id: FIRE, label: 'The fire' },
            ...at.tiles.map((one) => ({ id: one.id, label: one.label })),
          ]}
          value={of}
          onChange={setOf}
        />
      )}
      <label className="button plain giant camera">
        <span>{busy ? 'Making it smaller …' : 'Take a picture'}</span>
        <input
          type="file"
          className="unseen"
          accept="image/jpeg,image/png,image/webp"
          capture="environment"
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            if (file) take(file);
            event.target.value = '';
          }}
        />
      </label>
      <p className="faint">For colours to be measured later, lay a grey card beside the tile.</p>
    </section>
  );
}
