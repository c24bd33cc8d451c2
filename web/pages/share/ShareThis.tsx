import { type ReactNode, useState } from 'react';
import type { ShareWish } from '../../../api/contract/share.ts';
import { Button } from '../../parts/Button.tsx';
import { ErrorNotice } from '../../parts/Notice.tsx';
import { Select } from '../../parts/Select.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { useMakeShare } from '../../queries/shares.ts';
import { MadeAddress } from './MadeAddress.tsx';
import { endOf, SPANS, type Span } from './spans.ts';

type Terms = Pick<Extract<ShareWish, { kind: 'bench' }>, 'expiresAt' | 'comments'>;

/** Shares what the page shows, as it is now. */
export function ShareThis(at: {
  readonly study: string;
  /** What a visitor sees, in a sentence. */
  readonly seen: string;
  readonly wish: (terms: Terms) => ShareWish;
  /** What is to be chosen of it, beside how long it opens. */
  readonly children?: ReactNode;
  /** What may go with it, as ticks. */
  readonly ticks?: ReactNode;
}) {
  const [span, setSpan] = useState<Span>('30');
  const [comments, setComments] = useState(false);
  const make = useMakeShare(at.study);
  return (
    <section className="stack no-print" aria-labelledby="share-this">
      <h2 id="share-this">Share this</h2>
      <p className="faint">{at.seen}</p>
      <div className="columns">
        {at.children}
        <Select label="Opens for" choices={SPANS} value={span} onChange={setSpan} />
      </div>
      {at.ticks}
      <Tick isSelected={comments} onChange={setComments}>
        Visitors may leave a comment
      </Tick>
      <ErrorNotice error={make.error} title="Not shared" />
      <div>
        <Button
          isPending={make.isPending}
          onPress={() => make.mutate(at.wish({ expiresAt: endOf(span), comments }))}
        >
          Share it
        </Button>
      </div>
      {make.data && <MadeAddress made={make.data} />}
    </section>
  );
}
