import { useState } from 'react';
import { useLocation } from 'wouter';
import type { PlanRecord } from '../../../../api/contract/plan.ts';
import type { Factor } from '../../../../api/domain/trials/types.ts';
import { levelInWords } from '../../../../api/domain/trials/unit-words.ts';
import { Button } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { Field } from '../../../parts/Field.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { useDeletePlan, usePlan, useTilesOfPlan } from '../../../queries/fire.ts';
import { firePath } from '../paths.ts';
import { FiringPick, NO_FIRE } from '../tiles/NewTileDialog.tsx';
import { KIND_WORDS } from './PlansPage.tsx';

interface PlanPageProps {
  readonly study: string;
  readonly plan: string;
}

/** One plan: what it can tell, labels to print, and the way to make its tiles. */
export function PlanPage({ study, plan }: PlanPageProps) {
  const query = usePlan(study, plan);
  return (
    <Loaded query={query} what="the plan" page>
      {(found) => <PlanView study={study} plan={found} />}
    </Loaded>
  );
}

function PlanView({ study, plan }: { readonly study: string; readonly plan: PlanRecord }) {
  const remove = useDeletePlan(study);
  const [, navigate] = useLocation();
  const { kind, tiles, aliases, notes, seed, factors } = plan.plan;
  return (
    <>
      <PageHead
        title={plan.name}
        lead={`${KIND_WORDS[kind]}: ${factors.map((one) => one.name).join(', ')} on ${tiles.length === 1 ? 'one tile' : `${tiles.length} tiles`}. Places were drawn at random by seed ${seed}.`}
        up={{ to: firePath(study, '/plans'), label: 'Plans' }}
        actions={
          <>
            <Button onPress={() => window.print()}>Print the labels</Button>
            <ConfirmDelete
              label="Delete this plan"
              title={`Delete ${plan.name}?`}
              lost={<p>Tiles already made of it stay. This cannot be undone.</p>}
              onDelete={async () => {
                navigate(firePath(study, '/plans'));
                await remove.mutateAsync(plan.id);
              }}
            />
          </>
        }
      />
      {plan.reason && <p className="answer">{plan.reason}</p>}
      {[...aliases, ...notes]
        .filter((words) => words !== plan.reason)
        .map((words) => (
          <Notice key={words}>{words}</Notice>
        ))}
      <Labels plan={plan} />
      <MakeTiles study={study} plan={plan} />
      <Cautions hazards={['fire', 'lead']} folded />
    </>
  );
}

type Settings = Readonly<Record<string, string | number>>;
/** `3 coats, air open`: each with the unit that the plan gives it. */
const inWords = (settings: Settings, factors: PlanRecord['plan']['factors']) =>
  Object.entries(settings)
    .map(([name, value]) => levelInWords(asFactor(name, value, factors), value))
    .join(', ');

function asFactor(name: string, value: string | number, factors: PlanRecord['plan']['factors']): Factor {
  if (typeof value === 'string') return { name, kind: 'category', base: null };
  const unit = factors.find((one) => one.name === name)?.unit ?? '';
  return { name, kind: 'number', unit, step: 1 };
}

/** What is set on a zone beyond what the whole tile has. */
const ownOf = (zone: Settings, tile: Settings): Settings =>
  Object.fromEntries(Object.entries(zone).filter(([name, value]) => tile[name] !== value));

/** One label a tile: stick it on the back, or lay it beside. */
function Labels({ plan }: { readonly plan: PlanRecord }) {
  const severalFirings = plan.plan.tiles.some((tile) => tile.firing > 1);
  return (
    <section className="stack" aria-labelledby="labels">
      <h2 id="labels">Labels</h2>
      <ul className="labels">
        {plan.plan.tiles.map((tile) => (
          <li key={tile.label} className="stack tight">
            <strong className="tile-name">{tile.label}</strong>
            <span className="small">{plan.name}</span>
            <span>
              {severalFirings ? `Firing ${tile.firing} of this plan, place` : 'Place'} {tile.place} in the
              fire
            </span>
            {Object.keys(tile.settings).length > 0 && (
              <span>{inWords(tile.settings, plan.plan.factors)}</span>
            )}
            <ul
              className="zone-grid"
              aria-label={`Zones of ${tile.label}`}
              style={{
                gridTemplateColumns: `repeat(${Math.max(...tile.zones.map((zone) => zone.column))}, minmax(0, 1fr))`,
              }}
            >
              {tile.zones.map((zone) => (
                <li key={zone.label} className="zone" style={{ gridRow: zone.row, gridColumn: zone.column }}>
                  <strong>{zone.label}</strong>
                  <span className="small">
                    {inWords(ownOf(zone.settings, tile.settings), plan.plan.factors)}
                  </span>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </section>
  );
}

function MakeTiles({ study, plan }: { readonly study: string; readonly plan: PlanRecord }) {
  const make = useTilesOfPlan(study, plan.id);
  const [prefix, setPrefix] = useState('');
  const [firing, setFiring] = useState(NO_FIRE);
  return (
    <section className="stack no-print" aria-labelledby="make">
      <h2 id="make">Make the tiles</h2>
      <p className="faint">
        Each becomes a replica with its zones, their settings filled in and their outcome open.
      </p>
      <div className="row base">
        <Field
          label="In front of each label"
          hint="Such as L2-, so that labels stay unique"
          value={prefix}
          onChange={setPrefix}
        />
        <FiringPick study={study} value={firing} onChange={setFiring} />
      </div>
      <ErrorNotice error={make.error} title="No tiles made" />
      {make.data && (
        <Notice kind="done">
          Made {make.data.map((tile) => tile.label).join(', ')}; they are under Tiles.
        </Notice>
      )}
      <div>
        <Button
          look="primary"
          isPending={make.isPending}
          onPress={() => make.mutate({ prefix, firing: firing === NO_FIRE ? null : firing })}
        >
          Make the tiles
        </Button>
      </div>
    </section>
  );
}
