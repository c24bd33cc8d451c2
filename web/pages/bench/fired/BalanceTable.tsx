import type { FiredBatch, FiredLine } from '../../../../api/domain/batch/batch.ts';
import { GASES, type Gas } from '../../../../api/domain/batch/types.ts';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';

type Row = Omit<FiredLine, 'id' | 'oxides'>;
const NAMES: Partial<Record<Gas, string>> = {
  other: 'Other loss',
  halogens: 'Halogens',
  O2: 'O₂ (− taken up)',
};
const MINUS = '\u2212';
const cell = (g: number) => (Math.abs(g) < 5e-4 ? '0' : g.toFixed(3).replace('-', MINUS));

function columnsFor({ totals, lines }: FiredBatch): Column<Row>[] {
  const gases = GASES.filter((gas) => lines.some((line) => Math.abs(line.gases[gas]) > 5e-4));
  const number = (id: string, label: string, of: (row: Row) => number): Column<Row> => ({
    ...{ id, label, numeric: true },
    cell: (row) => cell(of(row)),
  });
  return [
    { id: 'name', label: 'Line', header: true, cell: (row) => row.name },
    number('weighed', 'Weighed, g', (row) => row.weighed),
    ...(totals.water > 0 ? [number('water', 'Water, g', (row) => row.water)] : []),
    number('dry', 'Dry, g', (row) => row.dry),
    ...gases.map((gas) => number(gas, `${NAMES[gas] ?? showAnalyte(gas)}, g`, (row) => row.gases[gas])),
    ...(totals.unreported > 5e-4 ? [number('rest', 'Unaccounted, g', (row) => row.unreported)] : []),
    number('fired', 'Fired, g', (row) => row.fired),
  ];
}

/** Dry = what leaves + what is unaccounted + fired, for every line and for the batch. */
export function BalanceTable({ fired }: { readonly fired: FiredBatch }) {
  const rows: Row[] = [...fired.lines, { ...fired.totals, name: 'Together' }];
  return (
    <>
      <DataTable
        label="Mass balance, line by line"
        columns={columnsFor(fired)}
        rows={rows}
        rowKey={(row) => `${rows.indexOf(row)}`}
      />
      <p className="faint small">
        In each line dry mass = gases + unaccounted + fired. Oxygen counts as leaving; with − it is taken from
        the air.
      </p>
    </>
  );
}
