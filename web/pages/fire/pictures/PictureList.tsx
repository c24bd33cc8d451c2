import { useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import type { Picture } from '../../../../api/contract/picture.ts';
import { Button } from '../../../parts/Button.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { type PictureOf, pictureUrl, useSendPicture } from '../../../queries/pictures.ts';
import { readyToSend } from './shrink.ts';
import './pictures.css';

/** What to call a picture where it cannot be seen. */
export const altOf = ({ caption, taken }: Pick<Picture, 'caption' | 'taken'>, of: string): string =>
  [caption || `Picture of ${of}`, taken].filter(Boolean).join(', ');

/** A button that takes a picture from the disk or the camera, makes it smaller where it is large, and sends it. */
export function SendPicture(at: { readonly study: string; readonly of: PictureOf; readonly name: string }) {
  const send = useSendPicture(at.study, at.of);
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);
  const take = async (files: FileList | null) => {
    setSaid('');
    setBusy(true);
    try {
      for (const file of files ?? []) {
        const ready = await readyToSend(file);
        await send.mutateAsync(ready.file);
        if (ready.said) setSaid(ready.said);
      }
    } catch {
      // Shown below, in the service's words.
    } finally {
      setBusy(false);
    }
  };
  return (
    <>
      <div className="row">
        <FileTrigger
          acceptedFileTypes={['image/jpeg', 'image/png', 'image/webp']}
          allowsMultiple
          onSelect={(files) => void take(files)}
        >
          <Button isPending={busy} aria-label={`Add a picture of ${at.name}`}>
            Add a picture
          </Button>
        </FileTrigger>
        <span className="hint">JPEG, PNG or WebP. The place and camera noted in it are dropped.</span>
      </div>
      {said && <Notice kind="done">{said}</Notice>}
      <ErrorNotice error={send.error} title="The picture was not taken in" />
    </>
  );
}

/** Small pictures side by side; one of them may be chosen. */
export function Thumbs(at: {
  readonly study: string;
  readonly pictures: readonly Picture[];
  readonly of: string;
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
}) {
  return (
    <ul className="thumbs" aria-label={`Pictures of ${at.of}`}>
      {at.pictures.map((picture) => (
        <li key={picture.id}>
          <button
            type="button"
            className="thumb"
            aria-pressed={picture.id === at.chosen}
            onClick={() => at.onChoose(picture.id)}
          >
            <img src={pictureUrl(at.study, picture.id)} alt={altOf(picture, at.of)} loading="lazy" />
            <span aria-hidden="true">{picture.caption || picture.taken || 'No caption'}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
