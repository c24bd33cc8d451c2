import type { ReactNode } from 'react';
import type { SharedOf } from '../../../../api/contract/shared.ts';
import { batchMethods, batchReferences } from '../../../../api/domain/report/batch-methods.ts';
import { Button } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { CsvDownload, saveFile } from '../../../parts/CsvDownload.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { DoiLink } from '../../../parts/DoiLink.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { FiredResult } from '../../bench/fired/FiredResult.tsx';
import { SharedNotice } from './SharedNotice.tsx';
import '../../bench/bench.css';

type Shared = SharedOf<'bench'>;
type Row = Shared['rows'][number];

/** A bench sheet, as somebody shared it. */
export default function SharedBench(at: { readonly shared: Shared; readonly children?: ReactNode }) {
  const { shared } = at;
  const { name, note, rows, unit, celsius, atmosphere, result } = shared;
  const { fired, unity, advice } = result;
  return (
    <>
      <PageHead title={`Bench sheet: ${name}`} lead={note} />
      <SharedNotice {...shared} />
      <section className="stack" aria-labelledby="weigh-heading">
        <h2 id="weigh-heading">What is weighed</h2>
        <DataTable
          label="What is weighed"
          columns={columnsFor(unit)}
          rows={rows}
          rowKey={(row) => `${rows.indexOf(row)}`}
        />
        <p>
          Fired to {celsius} °C in {atmosphere}.
        </p>
      </section>
      <Cautions hazards={fired.hazards} />
      <FiredResult result={{ fired, celsius, unity, advice }} />
      <section className="stack" aria-labelledby="tables-heading">
        <h2 id="tables-heading">Data as files</h2>
        <div className="row">
          <CsvDownload
            name="recipe"
            label="Recipe as CSV"
            header={['material', unit, 'dry share (wt%)', 'water in it (wt%)', 'handling']}
            rows={() => rows.map((row) => [row.name, row.grams, row.dryPercent, row.water, row.handling])}
          />
          <Button
            look="quiet"
            onPress={() => saveFile('shared.json', JSON.stringify(shared, null, 1), 'application/json')}
          >
            Everything as JSON
          </Button>
        </div>
      </section>
      <section className="stack" aria-labelledby="methods-heading">
        <h2 id="methods-heading">Methods</h2>
        <p>{batchMethods({ tiles: 0, version: shared.version })}</p>
        <ul>
          {batchReferences().map(({ text, doi }) => (
            <li key={doi}>
              {text} <DoiLink doi={doi} />
            </li>
          ))}
        </ul>
      </section>
      {at.children}
    </>
  );
}

const columnsFor = (unit: string): Column<Row>[] => [
  { id: 'name', label: 'Material', header: true, cell: (row) => row.name },
  { id: 'grams', label: `Weigh, ${unit}`, numeric: true, cell: (row) => row.grams.toFixed(2) },
  { id: 'running', label: `On the pan, ${unit}`, numeric: true, cell: (row) => row.running.toFixed(2) },
  { id: 'share', label: 'Dry share, wt%', numeric: true, cell: (row) => row.dryPercent.toFixed(1) },
  { id: 'handling', label: 'Handling', prose: true, cell: (row) => row.handling },
];
