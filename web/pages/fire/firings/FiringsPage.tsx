import { useState } from 'react';
import { Link } from 'wouter';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { Button, LinkButton } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { count } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Tick } from '../../../parts/Tick.tsx';
import type { PageProps } from '../../../paths.ts';
import { useDeleteFiring, useFirings } from '../../../queries/fire.ts';
import { comparePath, firingPath } from '../paths.ts';
import { FiringDialog } from './FiringDialog.tsx';
import { FiringFacts } from './FiringFacts.tsx';
import { inOneSentence } from './in-one-sentence.ts';

/** Every firing: when, where, with what, in which air, how hot; some of them to be compared. */
export function FiringsPage({ study }: PageProps) {
  const firings = useFirings(study);
  const [open, setOpen] = useState<string | null>(null);
  const [ticked, setTicked] = useState<readonly string[]>([]);
  const changed = open === 'new' ? open : (firings.data?.find((row) => row.id === open) ?? null);
  const tick = (id: string, on: boolean) =>
    setTicked(on ? [...ticked, id] : ticked.filter((one) => one !== id));
  return (
    <>
      <PageHead
        title="Firings"
        lead="How hot, how long, in what air; fuel and weather; which tiles went through."
        actions={
          <Button look="primary" onPress={() => setOpen('new')}>
            New firing
          </Button>
        }
      />
      <Loaded query={firings} what="the firings">
        {(rows) =>
          rows.length === 0 ? (
            <EmptyState title="No firing yet">
              <p>Record one before it is lit; its tiles, stages and log can be added later.</p>
            </EmptyState>
          ) : (
            <div className="stack">
              <Comparing study={study} logs={rows.filter((row) => row.log).length} ticked={ticked} />
              {rows.map((row) => (
                <Firing
                  key={row.id}
                  {...{ study, firing: row, ticked: ticked.includes(row.id) }}
                  onTick={(on) => tick(row.id, on)}
                  onChange={() => setOpen(row.id)}
                />
              ))}
            </div>
          )
        }
      </Loaded>
      <Cautions hazards={['fire', 'lead']} />
      <FiringDialog study={study} firing={changed} onClose={() => setOpen(null)} />
    </>
  );
}

function Comparing(at: {
  readonly study: string;
  readonly logs: number;
  readonly ticked: readonly string[];
}) {
  if (at.logs < 2) return null;
  return at.ticked.length < 2 ? (
    <p className="faint">Tick two or more firings with a log to compare them.</p>
  ) : (
    <div>
      <LinkButton look="primary" to={comparePath(at.study, at.ticked)}>
        {`Compare ${count(at.ticked.length, 'firing')}`}
      </LinkButton>
    </div>
  );
}

function Firing(at: {
  readonly study: string;
  readonly firing: FiringRecord;
  readonly ticked: boolean;
  readonly onTick: (on: boolean) => void;
  readonly onChange: () => void;
}) {
  const { study, firing } = at;
  const remove = useDeleteFiring(study);
  return (
    <section className="sheet stack" aria-labelledby={`firing-${firing.id}`}>
      <div className="section-head">
        <h2 id={`firing-${firing.id}`}>
          <Link href={firingPath(study, firing.id)}>{firing.name}</Link>
        </h2>
        <div className="row">
          <Button aria-label={`Change ${firing.name}`} onPress={at.onChange}>
            Change
          </Button>
          <ConfirmDelete
            label="Delete"
            name={firing.name}
            title={`Delete ${firing.name}?`}
            lost={
              <p>
                Its log, stages and notes will be lost; its {count(firing.tiles.length, 'tile')} stay, in no
                known fire.
              </p>
            }
            onDelete={() => remove.mutateAsync(firing.id)}
          />
        </div>
      </div>
      <p>{inOneSentence(firing)}</p>
      <FiringFacts firing={firing} />
      {firing.note && <p className="lines">{firing.note}</p>}
      <div className="row">
        {firing.log && (
          <Tick isSelected={at.ticked} onChange={at.onTick} aria-label={`Compare ${firing.name}`}>
            Compare
          </Tick>
        )}
        <LinkButton to={firingPath(study, firing.id)}>
          {firing.log || firing.readings.length > 0 ? 'Curve and log' : 'Add a log'}
        </LinkButton>
      </div>
    </section>
  );
}
