import { useState } from 'react';
import { Link } from 'wouter';
import type { Material, Span } from '../../../../api/domain/batch/types.ts';
import { LinkButton } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { Notice, Tag } from '../../../parts/Notice.tsx';
import { showAnalyte, showValue } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import { SearchBox } from '../../../parts/SearchBox.tsx';
import type { PageProps } from '../../../paths.ts';
import { SaveTable } from '../parts/SaveTable.tsx';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { benchPath, materialPath, roastPath } from '../paths.ts';
import { materialsTable } from '../tables.ts';
import { hazardWord, lossAt850, originWords } from './words.ts';

/** Everything that a batch can be weighed from. */
export function MaterialsPage({ study }: PageProps) {
  return (
    <>
      <PageHead
        title="Materials"
        lead="Your own, your roasted charges, and a starter shelf of minerals by their ideal formulas."
        actions={
          <LinkButton to={benchPath(study, '/materials/new')} look="primary">
            New material
          </LinkButton>
        }
      />
      <WithShelf study={study}>{(bench) => <Shelf study={study} bench={bench} />}</WithShelf>
    </>
  );
}

function Shelf({ study, bench }: { readonly study: string; readonly bench: Bench }) {
  const [words, setWords] = useState('');
  const { shelf, materials, roasts } = bench;
  const own = new Set(materials.map((one) => one.id));
  const roasted = new Set(roasts.map((one) => one.id));
  const kindOf = (id: string): Kind => (own.has(id) ? 'own' : roasted.has(id) ? 'roast' : 'starter');
  const wanted = words.toLowerCase().split(/\s+/);
  const rows = [...shelf.materials.values()]
    .filter((row) => wanted.every((word) => textOf(row).includes(word)))
    .sort((a, b) => ORDER[kindOf(a.id)] - ORDER[kindOf(b.id)]);
  const names = new Map([...materials, ...roasts].map(({ id, name }) => [id, name]));
  return (
    <div className="stack wide-gap">
      {Object.entries(shelf.faults).map(([id, reason]) => (
        <Notice key={id} kind="error" title={`${names.get(id) ?? 'A material'} cannot be used`}>
          <p>{reason}</p>
        </Notice>
      ))}
      <SearchBox label="Search materials" value={words} onSearch={setWords} />
      <DataTable label="Materials" columns={columnsFor(study, kindOf)} rows={rows} rowKey={(row) => row.id} />
      <p className="faint small">
        A negative loss takes up oxygen; a range is what purity and sulfur leave open.
      </p>
      <SaveTable name="materials" table={materialsTable(rows)} />
      {rows.length === 0 && <p className="faint">No material answers to this.</p>}
      <Cautions hazards={rows.flatMap((row) => row.hazards)} />
    </div>
  );
}

type Kind = 'own' | 'roast' | 'starter';
const ORDER: Readonly<Record<Kind, number>> = { own: 0, roast: 1, starter: 2 };

const formulaOf = ({ origin }: Material) => (origin.kind === 'formula' ? origin.formula : '');
const textOf = (row: Material) =>
  `${row.name} ${formulaOf(row)} ${row.hazards.map(hazardWord).join(' ')}`.toLowerCase();

function columnsFor(study: string, kindOf: (id: string) => Kind): Column<Material>[] {
  return [
    {
      id: 'name',
      label: 'Material',
      header: true,
      cell: (row) => <NameCell study={study} material={row} kind={kindOf(row.id)} />,
    },
    {
      id: 'made',
      label: 'Known by',
      prose: true,
      cell: (row) => (
        <>
          {[showAnalyte(formulaOf(row)), originWords(row)].filter(Boolean).join(', ')}
          {row.origin.kind === 'analysis' && <span className="small faint source"> {row.source}</span>}
        </>
      ),
    },
    {
      id: 'loss',
      label: 'Loses at 850 °C, wt%',
      numeric: true,
      cell: (row) => <Loss span={lossAt850(row)} />,
    },
    {
      id: 'hazards',
      label: 'Hazards',
      cell: ({ hazards }) => (
        <span className="tag-row">
          {hazards.map((hazard) => (
            <Tag key={hazard} kind={hazard === 'lead' || hazard === 'poison' ? 'error' : 'caution'}>
              {hazardWord(hazard)}
            </Tag>
          ))}
        </span>
      ),
    },
    { id: 'stock', label: 'On hand, g', numeric: true, cell: (row) => row.onHand ?? '' },
    {
      id: 'own',
      label: 'Own copy',
      hideLabel: true,
      cell: (row) =>
        kindOf(row.id) === 'starter' && row.origin.kind === 'formula' ? (
          <Link
            className="cell"
            href={`${benchPath(study, '/materials/new')}?from=${row.id}`}
            aria-label={`Make an own copy of ${row.name}`}
          >
            Own copy
          </Link>
        ) : null,
    },
  ];
}

function NameCell(at: { readonly study: string; readonly material: Material; readonly kind: Kind }) {
  const { id, name } = at.material;
  if (at.kind === 'starter') return <>{name}</>;
  return (
    <Link className="cell" href={at.kind === 'own' ? materialPath(at.study, id) : roastPath(at.study, id)}>
      {name}
    </Link>
  );
}

/** To a tenth; a range where purity or sulfur leaves one open. */
function Loss({ span }: { readonly span: Span }) {
  const [low, high] = [span.low, span.high].map((loss) => showValue(loss, { resolution: 0.1 }));
  return <span className="number">{low === high ? low : `${low} to ${high}`}</span>;
}
