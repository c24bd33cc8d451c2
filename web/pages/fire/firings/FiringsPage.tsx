import { useState } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { Button } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { count } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import type { PageProps } from '../../../paths.ts';
import { useDeleteFiring, useFirings } from '../../../queries/fire.ts';
import { FiringPictures } from '../pictures/FiringPictures.tsx';
import { Curve } from './Curve.tsx';
import { FiringDialog } from './FiringDialog.tsx';

/** Every firing: when, where, with what, in which air. */
export function FiringsPage({ study }: PageProps) {
  const firings = useFirings(study);
  const [open, setOpen] = useState<FiringRecord | 'new' | null>(null);
  return (
    <>
      <PageHead
        title="Firings"
        lead="Fuel, weather and air, and which tiles went through."
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
              <p>Record one before it is lit; its tiles and stages can be added at the fire.</p>
            </EmptyState>
          ) : (
            <div className="stack">
              {rows.map((row) => (
                <Firing key={row.id} study={study} firing={row} onChange={() => setOpen(row)} />
              ))}
            </div>
          )
        }
      </Loaded>
      <Cautions hazards={['fire', 'lead']} />
      <FiringDialog study={study} firing={open} onClose={() => setOpen(null)} />
    </>
  );
}

function Firing(at: {
  readonly study: string;
  readonly firing: FiringRecord;
  readonly onChange: () => void;
}) {
  const { firing } = at;
  const remove = useDeleteFiring(at.study);
  const facts: readonly (readonly [string, string])[] = [
    ['Day', firing.date ?? ''],
    ['Place', firing.place],
    ['Fuel', firing.fuel],
    ['Weather', firing.weather],
    ['Tiles', count(firing.tiles.length, 'tile')],
  ];
  return (
    <section className="sheet stack" aria-labelledby={`firing-${firing.id}`}>
      <div className="section-head">
        <h2 id={`firing-${firing.id}`}>{firing.name}</h2>
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
                Its stages and notes will be lost; its {count(firing.tiles.length, 'tile')} stay, in no known
                fire.
              </p>
            }
            onDelete={() => remove.mutateAsync(firing.id)}
          />
        </div>
      </div>
      <dl className="facts">
        {facts
          .filter(([, value]) => value !== '')
          .map(([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
      </dl>
      {firing.stages.length > 0 && (
        <ul>
          {firing.stages.map((stage) => (
            <li key={`${stage.air} ${stage.from}`}>
              {stage.air}, minute {stage.from / 60} to {stage.to / 60}
              {stage.note && `: ${stage.note}`}
            </li>
          ))}
        </ul>
      )}
      <Curve firing={firing} />
      <FiringPictures study={at.study} firing={firing.id} name={firing.name} />
      {firing.note && <p className="lines">{firing.note}</p>}
    </section>
  );
}
