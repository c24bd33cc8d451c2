import type { Picture } from '../../../../api/contract/picture.ts';
import { Button } from '../../../parts/Button.tsx';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useChangePicture, useDeletePicture } from '../../../queries/pictures.ts';

/** What a picture shows and when it was taken; and the way to be rid of it. */
export function PictureDetails(at: {
  readonly study: string;
  readonly picture: Picture;
  /** What is lost with it beside the picture. */
  readonly lost: string;
}) {
  const { study, picture } = at;
  const save = useChangePicture(study);
  const remove = useDeletePicture(study);
  const draft = useDraft(`picture.${picture.id}`, { caption: picture.caption, taken: picture.taken ?? '' });
  const { caption, taken } = draft.value;
  const same = caption === picture.caption && taken === (picture.taken ?? '');
  const submit = () =>
    save.mutate(
      { picture: picture.id, change: { caption, taken: taken || null } },
      { onSuccess: draft.clear },
    );
  return (
    <div className="stack tight">
      <div className="fields">
        <Field
          label="What it shows"
          value={caption}
          onChange={(next) => draft.set({ caption: next, taken })}
          maxLength={200}
        />
        <Field
          label="Taken"
          hint="A year, a month or a day: 2026-03-14"
          value={taken}
          onChange={(next) => draft.set({ caption, taken: next })}
        />
      </div>
      <ErrorNotice error={save.error} title="Not saved" />
      <div className="row">
        <Button onPress={submit} isDisabled={same} isPending={save.isPending}>
          Save the words
        </Button>
        <ConfirmDelete
          label="Delete the picture"
          title={`Delete ${picture.caption ? `“${picture.caption}”` : 'this picture'}?`}
          lost={<p>{at.lost}</p>}
          onDelete={() => remove.mutateAsync(picture.id)}
        />
      </div>
    </div>
  );
}
