import { useState } from 'react';
import { useLocation } from 'wouter';
import type { FoundFactor, NextTileAnswer, NextTileAsked } from '../../../../api/contract/trial.ts';
import type { Level } from '../../../../api/domain/trials/types.ts';
import { Button, LinkButton } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { showSignificant } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import type { PageProps } from '../../../paths.ts';
import { useMakePlan, useNextTile } from '../../../queries/fire.ts';
import { firePath, planPath } from '../paths.ts';
import { TrialChoices } from './TrialChoices.tsx';
import { type TrialChoice, useTrial } from './useTrial.ts';

/** Given what is known: the tile that would tell most. */
export function NextTilePage({ study }: PageProps) {
  const { query, choice } = useTrial(study);
  return (
    <>
      <PageHead
        title="Next tile"
        lead="Given what the tiles so far have told: the tile that would narrow the answer most, and by how much."
      />
      <Loaded query={query} what="what was varied">
        {(found) =>
          found.length === 0 ? (
            <EmptyState
              title="Nothing to go on yet"
              actions={<LinkButton to={firePath(study, '/plans/new')}>Plan a thickness ladder</LinkButton>}
            >
              <p>A first thickness ladder gives the next tile something to be reckoned from.</p>
            </EmptyState>
          ) : (
            <Asking study={study} choice={choice} />
          )
        }
      </Loaded>
      <Cautions hazards={['fire', 'lead']} folded />
    </>
  );
}

const ZONES = 6;

function Asking({ study, choice }: { readonly study: string; readonly choice: TrialChoice }) {
  const [zones, setZones] = useState(ZONES);
  const next = useNextTile(study);
  const chosen = choice.found.filter((one) => choice.chosen.includes(one.factor.name));
  const wish = { ...wishFor(choice, chosen), zonesOnTile: zones };
  const stale = next.variables !== undefined && JSON.stringify(next.variables) !== JSON.stringify(wish);
  return (
    <>
      <TrialChoices choice={choice} outcomes={false} />
      <div className="row base">
        <NumberField
          label="Zones on the tile"
          value={zones}
          onChange={(value) => setZones(value ?? ZONES)}
          {...{ min: 2, max: 60, whole: true }}
        />
        <Button
          look="primary"
          isPending={next.isPending}
          isDisabled={wish.options.length === 0}
          onPress={() => next.mutate(wish)}
        >
          Suggest a tile
        </Button>
      </div>
      <p className="faint small">
        What may be set: what was set before, on zones or on whole tiles. What belongs to the fire is held.
        {wish.options.length === 0 && ' Choose at least one factor that may be set on a tile.'}
      </p>
      <div role="status">
        {stale && !next.isPending && (
          <Notice>
            The choices above have changed since a tile was suggested: ask again, or put them back.
          </Notice>
        )}
      </div>
      {!stale && <ErrorNotice error={next.error} title="No tile can be suggested" />}
      {!stale && next.data && <Suggestion study={study} tile={next.data} />}
    </>
  );
}

const MOST_VALUES = 6;

function wishFor({ asked }: TrialChoice, chosen: readonly FoundFactor[]): Omit<NextTileAsked, 'zonesOnTile'> {
  const options = chosen.flatMap(({ factor, from, values }) =>
    from === 'firing' || factor.name === 'place in the fire'
      ? []
      : [{ name: factor.name, at: from, values: spread(values) }],
  );
  const outcome = asked.outcome === 'share' ? 'glossy' : asked.outcome;
  return { ...asked, outcome, options, forbidden: [] };
}

/** At most six values, ends kept. */
function spread(values: readonly Level[]): Level[] {
  if (values.length <= MOST_VALUES) return [...values];
  const at = (i: number) => values[Math.round((i * (values.length - 1)) / (MOST_VALUES - 1))]!;
  return Array.from({ length: MOST_VALUES }, (_, i) => at(i));
}

const inWords = (settings: Readonly<Record<string, Level>>) =>
  Object.entries(settings)
    .map(([name, value]) => `${name} ${value}`)
    .join(', ');

function Suggestion({ study, tile }: { readonly study: string; readonly tile: NextTileAnswer }) {
  const accept = useMakePlan(study);
  const [, navigate] = useLocation();
  const name = `Next tile: ${inWords(tile.tile) || 'a ladder'}`.slice(0, 200);
  return (
    <section className="sheet stack" aria-labelledby="suggestion">
      <h2 id="suggestion">The tile suggested</h2>
      <p className="answer">{tile.reason}</p>
      {Object.keys(tile.tile).length > 0 && <p>On the whole tile: {inWords(tile.tile)}.</p>}
      <ol>
        {tile.zones.map((zone, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: zones of one suggestion never change places
          <li key={i}>{inWords(zone)}</li>
        ))}
      </ol>
      <DataTable label="What it would narrow" columns={COLUMNS} rows={tile.shrinkage} rowKey={rowKey} snug />
      <p className="faint small">
        How far apart: the odds of a glossy zone at the upper end of a factor’s interval, over those at its
        lower end. An interval that tells all would be × 1 wide. In brackets the same as a difference of
        log-odds.
      </p>
      {tile.cautions.map((words) => (
        <Notice key={words} kind="caution">
          {words}
        </Notice>
      ))}
      <ErrorNotice error={accept.error} title="Not kept" />
      <div>
        <Button
          look="primary"
          isPending={accept.isPending}
          onPress={() =>
            accept.mutate(
              { name, note: '', accepted: { tile, seed: Date.now() % 1_000_000 } },
              { onSuccess: (plan) => navigate(planPath(study, plan.id)) },
            )
          }
        >
          Accept it as a plan
        </Button>
      </div>
    </section>
  );
}

const FAR = 1000;
/** `odds × 12 (2.5)`. */
function apartInWords(width: number): string {
  const times = Math.exp(width);
  const shown = times < 10 ? showSignificant(times, 2) : count(Math.round(times));
  return `odds × ${times > FAR ? `over ${count(FAR)}` : shown} (${showSignificant(width, 2)})`;
}
const count = (n: number) => n.toLocaleString('en-GB');

type Narrowing = NextTileAnswer['shrinkage'][number];
const rowKey = (row: Narrowing) => `${row.factor} ${row.contrast}`;
const COLUMNS: readonly Column<Narrowing>[] = [
  { id: 'factor', label: 'Factor', header: true, cell: (row) => `${row.factor}, ${row.contrast}` },
  { id: 'now', label: 'Ends of the interval apart now', numeric: true, cell: (row) => apartInWords(row.now) },
  { id: 'then', label: 'Expected', numeric: true, cell: (row) => apartInWords(row.expected) },
  {
    id: 'less',
    label: 'Narrower by',
    numeric: true,
    cell: (row) => `${Math.round(100 * (1 - row.expected / row.now))} %`,
  },
];
