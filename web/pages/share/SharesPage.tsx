import { useState } from 'react';
import { Link } from 'wouter';
import type { PlacementSummary } from '../../../api/contract/placement.ts';
import type { Share, ShareMade } from '../../../api/contract/share.ts';
import { Button, LinkButton } from '../../parts/Button.tsx';
import { ConfirmDelete } from '../../parts/ConfirmDelete.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { ErrorNotice, Tag } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Select } from '../../parts/Select.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { type PageProps, studyPath } from '../../paths.ts';
import { usePlacements } from '../../queries/placements.ts';
import { useDeleteShare, useMakeShare, useRevokeShare, useShares } from '../../queries/shares.ts';
import { day } from '../placement/words.ts';
import { MadeAddress } from './MadeAddress.tsx';
import { Said } from './Said.tsx';
import { endOf, SPANS, type Span } from './spans.ts';
import { TakeBundle } from './TakeBundle.tsx';
import './share.css';

/** Laying kept placements open to others, and taking them back. */
export function SharesPage({ study }: PageProps) {
  const placements = usePlacements(study);
  return (
    <>
      <PageHead
        title="Share"
        lead={
          <>
            What you found, at an address nobody can guess: to be read, not changed, without an account. A
            placement is shared here; <Link href={studyPath(study, '/fire/mattered')}>what mattered</Link> and{' '}
            <Link href={studyPath(study, '/bench')}>a batch</Link> from their own pages.
          </>
        }
      />
      <Loaded query={placements} what="the kept placements">
        {(kept) => (kept.length === 0 ? <NoneKept study={study} /> : <Make study={study} kept={kept} />)}
      </Loaded>
      <Shares study={study} />
      <TakeBundle />
    </>
  );
}

function NoneKept({ study }: PageProps) {
  return (
    <EmptyState
      title="Nothing is kept yet"
      actions={
        <LinkButton to={studyPath(study, '/placement')} look="primary">
          Go to Placement
        </LinkButton>
      }
    >
      <p>What is shared is a placement as it was kept. Keep one first.</p>
    </EmptyState>
  );
}

function Make({ study, kept }: PageProps & { readonly kept: readonly PlacementSummary[] }) {
  const [placement, setPlacement] = useState(kept[0]!.id);
  const [span, setSpan] = useState<Span>('30');
  const [comments, setComments] = useState(false);
  const [made, setMade] = useState<ShareMade | null>(null);
  const make = useMakeShare(study);
  const share = () => {
    make.mutate({ placement, expiresAt: endOf(span), comments }, { onSuccess: setMade });
  };
  return (
    <section className="sheet stack" aria-labelledby="make-heading">
      <h2 id="make-heading">Share a placement</h2>
      <p className="faint">
        The visitor sees the placement with its note, the sherds compared and those left out, the slips
        measured on them and their wares, methods and sources, and can take all of it as reported, with
        catalogue numbers and notes; nothing else of the study.
      </p>
      <div className="columns">
        <Select
          label="Placement"
          choices={kept.map(({ id, name, createdAt }) => ({ id, label: name, hint: day(createdAt) }))}
          value={placement}
          onChange={setPlacement}
        />
        <Select label="Opens for" choices={SPANS} value={span} onChange={setSpan} />
      </div>
      <Tick isSelected={comments} onChange={setComments}>
        Visitors may leave a comment
      </Tick>
      <ErrorNotice error={make.error} title="Not shared" />
      <div>
        <Button look="primary" isPending={make.isPending} onPress={share}>
          Share it
        </Button>
      </div>
      {made && <MadeAddress made={made} />}
    </section>
  );
}

const STATES = {
  open: { label: 'Open', kind: 'done' },
  expired: { label: 'Run out', kind: 'plain' },
  revoked: { label: 'Taken back', kind: 'plain' },
} as const;

function Shares({ study }: PageProps) {
  const query = useShares(study);
  return (
    <section className="stack" aria-labelledby="shares-heading">
      <h2 id="shares-heading">Shared so far</h2>
      <Loaded query={query} what="the shares">
        {(shares) =>
          shares.length === 0 ? (
            <p className="faint">Nothing is shared.</p>
          ) : (
            shares.map((share) => <OneShare key={share.id} study={study} share={share} />)
          )
        }
      </Loaded>
    </section>
  );
}

function OneShare({ study, share }: PageProps & { readonly share: Share }) {
  const revoke = useRevokeShare(study);
  const remove = useDeleteShare(study);
  const { label, kind } = STATES[share.state];
  const made = `Shared on ${day(share.createdAt)}`;
  return (
    <article className="sheet stack tight">
      <div className="section-head">
        <h3>
          {share.name} <Tag kind={kind}>{label}</Tag>
        </h3>
        <div className="row">
          {share.state === 'open' && (
            <ConfirmDelete
              label="Take back"
              name={`${share.name}, ${made.toLowerCase()}`}
              title={`Take “${share.name}” back?`}
              lost={<p>Its address stops opening for good. What was said on it stays with you.</p>}
              confirm="Take it back"
              onDelete={() => revoke.mutateAsync(share.id)}
            />
          )}
          <ConfirmDelete
            label="Delete"
            name={`${share.name}, ${made.toLowerCase()}`}
            title={`Delete the share “${share.name}”?`}
            lost={<p>Its address and what was said on it go. The placement stays.</p>}
            onDelete={() => remove.mutateAsync(share.id)}
          />
        </div>
      </div>
      <p className="small faint">
        {made}
        {share.revokedAt
          ? `, taken back on ${day(share.revokedAt)}`
          : share.expiresAt
            ? `, until ${day(share.expiresAt)}`
            : ''}
        .
      </p>
      {(share.comments || share.said.length > 0) && <Said said={share.said} />}
    </article>
  );
}
