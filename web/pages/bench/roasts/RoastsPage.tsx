import { Link } from 'wouter';
import type { StoredRoast } from '../../../../api/contract/roast.ts';
import { judgeRoast, NO_MELTING_NEEDED } from '../../../../api/domain/batch/roast-judgement.ts';
import { LinkButton } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import type { PageProps } from '../../../paths.ts';
import { Range } from '../parts/Range.tsx';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { benchPath, roastPath } from '../paths.ts';

/** Roasts and frits: each charge is a material from then on. */
export function RoastsPage({ study }: PageProps) {
  const add = (
    <LinkButton to={benchPath(study, '/roasts/new')} look="primary">
      New roast
    </LinkButton>
  );
  return (
    <>
      <PageHead
        title="Roasts"
        lead="Galena needs air and heat before it can become glass. A roasted or fritted charge joins the shelf, with what is not known of it."
        actions={add}
      />
      <Notice>{NO_MELTING_NEEDED}</Notice>
      <WithShelf study={study}>
        {(bench) =>
          bench.roasts.length === 0 ? (
            <EmptyState title="No roast yet">
              <p>Weigh the ground ore, roast it outdoors, weigh it again.</p>
            </EmptyState>
          ) : (
            <DataTable
              label="Roasts"
              columns={columnsFor(study, bench)}
              rows={bench.roasts}
              rowKey={(row) => row.id}
            />
          )
        }
      </WithShelf>
      <Cautions hazards={['lead', 'sulfur', 'fire']} />
    </>
  );
}

function columnsFor(study: string, { shelf }: Bench): Column<StoredRoast>[] {
  const result = (row: StoredRoast) => shelf.roasts.get(row.id);
  return [
    {
      id: 'name',
      label: 'Roast',
      header: true,
      cell: (row) => (
        <Link className="cell" href={roastPath(study, row.id)}>
          {row.name}
        </Link>
      ),
    },
    {
      id: 'charge',
      label: 'Charge',
      prose: true,
      cell: (row) =>
        row.charge
          .map((line) => `${line.amount} g ${shelf.materials.get(line.material)?.name ?? 'lost material'}`)
          .join(', '),
    },
    { id: 'fire', label: 'Fire', cell: (row) => `${row.celsius} °C, ${row.hours} h` },
    {
      id: 'change',
      label: 'Change, wt%',
      numeric: true,
      cell: (row) => result(row)?.change.toFixed(1).replace('-', '\u2212') ?? '',
    },
    {
      id: 'sulfur',
      label: 'Sulfur left, wt%',
      numeric: true,
      cell: (row) => {
        const made = result(row);
        return made ? <Range span={made.sulfur.percent} /> : null;
      },
    },
    {
      id: 'verdict',
      label: 'Judgement',
      prose: true,
      cell: (row) => {
        const made = result(row);
        return made ? judgeRoast(made, row.looks).verdict : (shelf.faults[row.id] ?? '');
      },
    },
  ];
}
