import { useState } from 'react';
import type { Batch } from '../../../../api/contract/batch.ts';
import { fireOfEntry, linesOfEntries } from '../../../../api/domain/batch/bench-shelf.ts';
import type { FiredOxide } from '../../../../api/domain/batch/fired-oxides.ts';
import { type AmountOf, benchSheet, type SheetRow, scaleBatch } from '../../../../api/domain/batch/scale.ts';
import { Button } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { Field } from '../../../parts/Field.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { NumberWithUnit } from '../../../parts/NumberWithUnit.tsx';
import { readNumber, showAnalyte } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Select } from '../../../parts/Select.tsx';
import { useBatches } from '../../../queries/bench.ts';
import { useStudy } from '../../../queries/studies.ts';
import { fireHere } from '../fired/compute.ts';
import { attempt } from '../parts/attempt.ts';
import { showRange } from '../parts/Range.tsx';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { batchPath } from '../paths.ts';
import { Gone } from './BatchPage.tsx';
import { AMOUNTS_OF } from './ScaleTo.tsx';
import { ShareSheet } from './ShareSheet.tsx';

interface SheetPageProps {
  readonly study: string;
  readonly batch: string;
}

/** A batch as it is weighed out: on paper beside the scale. */
export function SheetPage({ study, batch: id }: SheetPageProps) {
  const batches = useBatches(study);
  return (
    <WithShelf study={study}>
      {(bench) => (
        <Loaded query={batches} what="the batch" page>
          {(rows) => {
            const batch = rows.find((one) => one.id === id);
            return batch ? <Sheet study={study} bench={bench} batch={batch} /> : <Gone study={study} />;
          }}
        </Loaded>
      )}
    </WithShelf>
  );
}

interface SheetProps {
  readonly study: string;
  readonly bench: Bench;
  readonly batch: Batch;
}

function Sheet({ study, bench, batch }: SheetProps) {
  const [grams, setGrams] = useState('');
  const [of, setOf] = useState<AmountOf>('weighed');
  const name = useStudy(study).data?.name ?? '';
  const wanted = readNumber(grams);
  const wrong = grams.trim() && !(wanted !== null && wanted > 0) ? 'A number above zero is needed.' : null;
  const made = attempt(() => {
    const lines = linesOfEntries(batch.lines, bench.shelf);
    const fire = fireOfEntry(batch.fire);
    const scaled = wanted !== null && wanted > 0 ? scaleBatch(lines, { grams: wanted, of }, fire) : lines;
    const entries = scaled.map(({ material, amount, water = 0 }) => ({
      material: material.id,
      amount,
      water,
    }));
    return { sheet: benchSheet(scaled), ...fireHere(entries, batch.fire, bench.shelf) };
  });
  return (
    <>
      <PageHead
        title={`Bench sheet: ${batch.name}`}
        up={{ to: batchPath(study, batch.id), label: batch.name }}
        lead={name}
        actions={<Button onPress={() => print()}>Print</Button>}
      />
      <div className="row base no-print">
        <Field
          label="Amount wanted (g)"
          inputMode="decimal"
          value={grams}
          onChange={setGrams}
          wrong={wrong}
        />
        <Select label="of it" choices={AMOUNTS_OF} value={of} onChange={setOf} />
      </div>
      {batch.unit === 'parts' && wanted === null && (
        <Notice>Amounts are parts by mass: give the amount wanted to turn them into grams.</Notice>
      )}
      {made.reason && <Notice kind="error">{made.reason}</Notice>}
      {made.value && (
        <>
          <section className="stack sheet-print" aria-label="What to weigh">
            <DataTable
              label="What to weigh"
              columns={columnsFor(made.value.sheet.rows, batch.unit === 'parts' && wanted === null)}
              rows={made.value.sheet.rows}
              rowKey={(row) => `${made.value.sheet.rows.indexOf(row)}`}
            />
            <dl className="facts">
              <Fact name="Weighed in all" value={made.value.sheet.weighed} />
              <Fact name="Dry" value={made.value.sheet.dry} />
              <Fact name="Fired" value={made.value.fired.totals.fired} />
              {made.value.sheet.cost !== null && (
                <div>
                  <dt>Cost, in the study’s currency</dt>
                  <dd>{made.value.sheet.cost.toFixed(2)}</dd>
                </div>
              )}
            </dl>
            <p>
              Fire to {batch.fire.celsius} °C in {batch.fire.atmosphere}. Fired paint, wt%:{' '}
              {made.value.fired.oxides
                .filter((one) => one.percent >= 0.05)
                .map(percentInWords)
                .join(', ')}
              . A range is what sulfur, purity and roast leave open.
            </p>
            {batch.note && <p className="lines">{batch.note}</p>}
          </section>
          <Cautions hazards={made.value.fired.hazards} />
          <ShareSheet study={study} batch={batch} />
        </>
      )}
    </>
  );
}

/** The range where it is wide, else the figure: `SO₃ 1.6 to 8.7`. */
function percentInWords(one: FiredOxide): string {
  const wide = one.high - one.low > 0.1;
  return `${showAnalyte(one.oxide)} ${wide ? showRange(one) : one.percent.toFixed(1)}`;
}

function Fact({ name, value }: { readonly name: string; readonly value: number }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <NumberWithUnit value={value} unit="g" resolution={0.01} />
      </dd>
    </div>
  );
}

function columnsFor(rows: readonly SheetRow[], parts: boolean): Column<SheetRow>[] {
  const unit = parts ? 'parts' : 'g';
  const wet = rows.some((row) => row.water > 0);
  const short = rows.some((row) => row.short !== null && row.short > 0);
  const number = (id: string, label: string, cell: (row: SheetRow) => string): Column<SheetRow> => ({
    ...{ id, label, cell, numeric: true },
  });
  return [
    {
      id: 'done',
      label: 'Done',
      hideLabel: true,
      cell: () => <span className="tick-box" aria-hidden="true" />,
    },
    { id: 'name', label: 'Material', header: true, cell: (row) => row.name },
    number('grams', `Weigh, ${unit}`, (row) => row.grams.toFixed(2)),
    number('running', `On the pan, ${unit}`, (row) => row.running.toFixed(2)),
    number('share', 'Dry share, wt%', (row) => row.dryPercent.toFixed(1)),
    ...(wet ? [number('water', 'Water in it, wt%', (row) => row.water.toFixed(1))] : []),
    ...(short && !parts
      ? [number('short', 'Short on the shelf, g', (row) => (row.short ?? 0).toFixed(2))]
      : []),
    { id: 'handling', label: 'Handling', prose: true, cell: (row) => row.handling },
  ];
}
