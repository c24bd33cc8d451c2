import { type FormEvent, useState } from 'react';
import type { Shared } from '../../../../api/contract/shared.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { useComment } from '../../../queries/shares.ts';
import { Said } from '../Said.tsx';

/** What visitors said, and a place to say something. */
export function Comments({ token, shared }: { readonly token: string; readonly shared: Shared }) {
  const [name, setName] = useState('');
  const [text, setText] = useState('');
  const comment = useComment(token);
  const send = async (event: FormEvent) => {
    event.preventDefault();
    try {
      await comment.mutateAsync({ name, text });
      setText('');
    } catch {
      // Shown below; what was typed stays.
    }
  };
  return (
    <section className="stack" aria-labelledby="comments-heading">
      <h2 id="comments-heading">Comments</h2>
      <Said said={shared.said} />
      <form className="stack" onSubmit={send}>
        <Field label="Your name" value={name} onChange={setName} />
        <Field label="Your comment" value={text} onChange={setText} lines={3} />
        <ErrorNotice error={comment.error} title="Not sent" />
        <div>
          <Button
            type="submit"
            isPending={comment.isPending}
            isDisabled={name.trim() === '' || text.trim() === ''}
          >
            Leave this comment
          </Button>
        </div>
      </form>
    </section>
  );
}
