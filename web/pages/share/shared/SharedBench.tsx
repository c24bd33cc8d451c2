import type { ReactNode } from 'react';
import type { SharedOf } from '../../../../api/contract/shared.ts';
import { batchMethods, batchReferences } from '../../../../api/domain/report/batch-methods.ts';
import { Cautions } from '../../../parts/Cautions.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { DoiLink } from '../../../parts/DoiLink.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import { FiredResult } from '../../bench/fired/FiredResult.tsx';
import { BATCH_FILES, BatchDrawing } from '../../bench/measured/BatchFigure.tsx';
import { FigureFilesOf } from '../FigureFiles.tsx';
import { DataFiles, figuresFrom, type OfShare } from './DataFiles.tsx';
import { SharedNotice } from './SharedNotice.tsx';
import '../../bench/bench.css';

type Row = SharedOf<'bench'>['rows'][number];

/** A bench sheet, as somebody shared it. */
export default function SharedBench(at: OfShare<'bench'> & { readonly children?: ReactNode }) {
  const { shared, files } = at;
  const { name, note, rows, unit, celsius, atmosphere, result, target, tiles } = shared;
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
      <BatchDrawing sides={{ name, celsius, fired, target, tiles }}>
        <FigureFilesOf figures={BATCH_FILES} from={figuresFrom(files)} />
      </BatchDrawing>
      <DataFiles shared={shared} files={files} />
      <section className="stack" aria-labelledby="methods-heading">
        <h2 id="methods-heading">Methods</h2>
        <p>{batchMethods({ tiles: tiles.length, version: shared.version })}</p>
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
