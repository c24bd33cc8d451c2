import type { BatchSet, MaterialRange } from '../../../../api/domain/batch/set-summary.ts';
import type { TargetSpread } from '../../../../api/domain/batch/target-spread.ts';
import { Button } from '../../../parts/Button.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { Progress } from '../../../parts/Progress.tsx';
import type { Means, TargetSource } from './target-form.ts';
import { useBatchSet } from './useWorker.ts';

const DRAWS = 2000;

interface SetSectionProps {
  readonly means: Means;
  readonly spread: TargetSpread | null;
  readonly source: TargetSource;
}

/** Not one recipe but all that land inside the ware group. */
export function SetSection({ means, spread, source }: SetSectionProps) {
  const { run, find, stop } = useBatchSet();
  const { progress, said } = run;
  return (
    <section className="stack" aria-labelledby="set">
      <h2 id="set">Every batch that lands inside the group</h2>
      <p className="faint">
        A centre is not a recipe: {DRAWS.toLocaleString('en-GB')} targets are drawn from the group’s spread,
        the nearest batch is found for each, and those that fire to a paint inside the group are kept.
      </p>
      {!spread && (
        <p className="faint">
          {source === 'group'
            ? 'The spread of this group cannot be told: see the remarks on the target.'
            : 'Only a ware group has a spread: aim at one.'}
        </p>
      )}
      {spread && !progress && (
        <div>
          <Button onPress={() => find({ problem: means, spread, options: { draws: DRAWS } })}>
            Find the set
          </Button>
        </div>
      )}
      {progress && (
        <div className="stack tight">
          <Progress
            label="Finding batches"
            share={progress.done / progress.of}
            words={`${progress.done} of ${progress.of}`}
          />
          <div>
            <Button onPress={stop}>Stop</Button>
          </div>
        </div>
      )}
      <ErrorNotice error={run.error} />
      {said && 'reason' in said && <Notice kind="error">{said.reason}</Notice>}
      {said && 'value' in said && <Found set={said.value} />}
    </section>
  );
}

function Found({ set }: { readonly set: BatchSet }) {
  return (
    <>
      <Notice kind="done">{set.words}</Notice>
      {set.materials.length > 0 && (
        <DataTable
          label="Batches inside the group"
          columns={COLUMNS}
          rows={[...set.materials].sort((a, b) => b.median - a.median)}
          rowKey={(row) => row.id}
        />
      )}
      {set.ties.length > 0 && (
        <ul>
          {set.ties.slice(0, 6).map(({ words, correlation }) => (
            <li key={words}>
              {words} (r {correlation.toFixed(2).replace('-', '\u2212')})
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

const number = (id: string, label: string, of: (row: MaterialRange) => number): Column<MaterialRange> => ({
  ...{ id, label, numeric: true },
  cell: (row) => of(row).toFixed(1),
});

const COLUMNS: readonly Column<MaterialRange>[] = [
  { id: 'name', label: 'Material', header: true, cell: (row) => row.name },
  number('least', 'Least, wt% dry', (row) => row.least),
  number('low', '5 %', (row) => row.low),
  number('median', 'Median', (row) => row.median),
  number('high', '95 %', (row) => row.high),
  number('most', 'Most', (row) => row.most),
  number('used', 'Used in, %', (row) => 100 * row.used),
];
