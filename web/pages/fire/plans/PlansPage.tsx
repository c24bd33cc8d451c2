import { Link } from 'wouter';
import type { PlanRecord } from '../../../../api/contract/plan.ts';
import { LinkButton } from '../../../parts/Button.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import type { PageProps } from '../../../paths.ts';
import { usePlans } from '../../../queries/fire.ts';
import { firePath, planPath } from '../paths.ts';

/** Sets of tiles drawn up before they are painted. */
export function PlansPage({ study }: PageProps) {
  const plans = usePlans(study);
  const make = (
    <LinkButton to={firePath(study, '/plans/new')} look="primary">
      New plan
    </LinkButton>
  );
  return (
    <>
      <PageHead
        title="Plans"
        lead="Tiles drawn up before they are painted: places on the tile and in the fire are drawn at random, so that chance and not habit spreads them."
        actions={make}
      />
      <Loaded query={plans} what="the plans">
        {(rows) =>
          rows.length === 0 ? (
            <EmptyState title="No plan yet" actions={make}>
              <p>Begin with a thickness ladder: one paint, one tile, from one coat to six.</p>
            </EmptyState>
          ) : (
            <DataTable label="Plans" columns={columnsFor(study)} rows={rows} rowKey={(row) => row.id} />
          )
        }
      </Loaded>
    </>
  );
}

export const KIND_WORDS: Readonly<Record<PlanRecord['plan']['kind'], string>> = {
  ladder: 'A ladder',
  'one-at-a-time': 'One factor at a time',
  full: 'Every combination',
  fraction: 'A fraction of all combinations',
  'next-tile': 'A suggested tile',
};

const columnsFor = (study: string): Column<PlanRecord>[] => [
  {
    id: 'name',
    label: 'Plan',
    header: true,
    cell: (row) => (
      <Link className="cell" href={planPath(study, row.id)}>
        {row.name}
      </Link>
    ),
  },
  { id: 'kind', label: 'Kind', cell: (row) => KIND_WORDS[row.plan.kind] },
  { id: 'factors', label: 'Factors', cell: (row) => row.plan.factors.map((one) => one.name).join(', ') },
  { id: 'tiles', label: 'Tiles', numeric: true, cell: (row) => row.plan.tiles.length },
  { id: 'made', label: 'Drawn up', cell: (row) => row.createdAt.slice(0, 10) },
];
