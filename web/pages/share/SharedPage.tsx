import { type FormEvent, useState } from 'react';
import type { Shared, SharedOf } from '../../../api/contract/shared.ts';
import { Button, LinkButton } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { ErrorNotice, Notice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { messageOf, Refusal } from '../../problem.ts';
import { useComment, useShared } from '../../queries/shares.ts';
import { ResultsHead, ResultsRest } from '../placement/Results.tsx';
import { FIRST_VIEW, type ViewState } from '../placement/view-state.ts';
import { day } from '../placement/words.ts';
import { FigureFiles } from './FigureFiles.tsx';
import { Said } from './Said.tsx';
import { Words } from './Words.tsx';
import '../placement/placement.css';
import '../placement/slip/slip.css';

const TABLES = ['placements', 'contributions', 'scores', 'loadings', 'members', 'excluded'] as const;

/** What somebody shared: to be read, not changed. */
export default function SharedPage({ token }: { readonly token: string }) {
  const query = useShared(token);
  if (query.error instanceof Refusal)
    return <PageHead title="Nothing to see here" lead={messageOf(query.error)} />;
  return (
    <Loaded query={query} what="what was shared" page>
      {(shared) =>
        shared.kind === 'placement' ? (
          <Open token={token} shared={shared} />
        ) : (
          <PageHead
            title={shared.name}
            lead="This sheet is filled in at the fire."
            actions={<LinkButton to={`/shared/${token}/sheet`}>Open the sheet</LinkButton>}
          />
        )
      }
    </Loaded>
  );
}

function Open({ token, shared }: { readonly token: string; readonly shared: SharedOf<'placement'> }) {
  const [view, setView] = useState<ViewState>(FIRST_VIEW);
  const onView = (part: Partial<ViewState>) => setView((now) => ({ ...now, ...part }));
  const { placement, text } = shared;
  const shown = { study: null, result: placement.result, view, onView };
  const from = `/api/shared/${encodeURIComponent(token)}`;
  return (
    <>
      <PageHead
        title={placement.name}
        lead={placement.note}
        actions={<LinkButton to={`/shared/${token}/talk`}>Show it as a talk</LinkButton>}
      />
      <Notice>
        <p>
          Shared with you to read. Computed on {day(placement.createdAt)} by version {placement.version} and
          frozen since.
          {shared.expiresAt && ` It can be opened until ${day(shared.expiresAt)}.`}
        </p>
      </Notice>
      <div className="placing-head">
        <ResultsHead {...shown} />
      </div>
      <div className="placing-rest">
        <ResultsRest {...shown} sherdActions={() => null} />
        <FigureFiles from={{ address: from }} view={view} />
        <section className="stack" aria-labelledby="tables-heading">
          <h2 id="tables-heading">Tables as CSV</h2>
          <div className="row">
            {TABLES.map((table) => (
              <a key={table} className="button quiet" href={`${from}/tables/${table}`} download>
                {table}
              </a>
            ))}
          </div>
        </section>
        <Words text={text} />
        {shared.comments && <Comments token={token} shared={shared} />}
      </div>
    </>
  );
}

function Comments({ token, shared }: { readonly token: string; readonly shared: Shared }) {
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
