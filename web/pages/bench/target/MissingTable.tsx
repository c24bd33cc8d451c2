import { useMemo } from 'react';
import type { Mending } from '../../../../api/domain/batch/missing-material.ts';
import type { RecipeProblem } from '../../../../api/domain/batch/recipe-model.ts';
import { Button } from '../../../parts/Button.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { showAnalyte, showSignificant } from '../../../parts/numbers.ts';
import type { Bench } from '../parts/WithShelf.tsx';
import type { TargetForm } from './target-form.ts';
import { useMissing } from './useWorker.ts';

interface MissingTableProps {
  readonly problem: RecipeProblem;
  readonly bench: Bench;
  readonly form: TargetForm;
  readonly set: (part: Partial<TargetForm>) => void;
}

/** Which materials of the shelf, not yet allowed, would bring the batch nearer. */
export function MissingTable({ problem, bench, form, set }: MissingTableProps) {
  const shelf = useMemo(() => [...bench.shelf.materials.values()], [bench]);
  const said = useMissing(problem, shelf);
  const add = (id: string) => set({ materials: [...form.materials, id] });
  return (
    <section className="stack" aria-labelledby="missing">
      <h2 id="missing">What would bring it nearer</h2>
      {said === null && (
        <p className="faint" role="status">
          Trying every other material of the shelf …
        </p>
      )}
      {said && 'reason' in said && <p className="faint">{said.reason}</p>}
      {said && 'value' in said && said.value.length === 0 && (
        <p className="faint">No other material of the shelf brings it nearer by more than 2 %.</p>
      )}
      {said && 'value' in said && said.value.length > 0 && (
        <DataTable
          label="What would bring it nearer"
          columns={columnsFor(add)}
          rows={said.value.slice(0, 8)}
          rowKey={(row) => row.id}
        />
      )}
    </section>
  );
}

function columnsFor(add: (id: string) => void): Column<Mending>[] {
  return [
    { id: 'name', label: 'Material', header: true, cell: (row) => row.name },
    {
      id: 'distance',
      label: 'Distance',
      numeric: true,
      cell: (row) => `${showSignificant(row.before)} → ${showSignificant(row.after)}`,
    },
    { id: 'amount', label: 'g in 100 g', numeric: true, cell: (row) => row.amount.toFixed(2) },
    { id: 'mends', label: 'Would then be met', cell: (row) => row.mends.map(showAnalyte).join(', ') },
    {
      id: 'add',
      label: 'Allow it',
      hideLabel: true,
      cell: (row) => (
        <Button look="quiet" onPress={() => add(row.id)} aria-label={`Allow ${row.name}`}>
          Allow
        </Button>
      ),
    },
  ];
}
