import { useState } from 'react';
import type {
  NearestBatches,
  RecipeRow,
  RecipeSolution,
} from '../../../../api/domain/batch/nearest-batch.ts';
import { ASSUMED_SIGMA } from '../../../../api/domain/batch/recipe-model.ts';
import { Button } from '../../../parts/Button.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { withFormulas } from '../../../parts/formulas.ts';
import { Notice, Tag } from '../../../parts/Notice.tsx';
import { NumberWithUnit } from '../../../parts/NumberWithUnit.tsx';
import { showAnalyte, showSignificant } from '../../../parts/numbers.ts';
import type { FireForm } from '../parts/fire-form.ts';
import { SaveTable } from '../parts/SaveTable.tsx';
import { nearestFired, nearestRecipes } from '../tables.ts';
import { METRICS } from './found-batch.ts';
import { KeepBatch } from './KeepBatch.tsx';
import { ShareFound } from './ShareFound.tsx';
import type { Aimed } from './target-form.ts';

interface SolutionsViewProps {
  readonly study: string;
  readonly near: NearestBatches;
  readonly aimed: Aimed;
  readonly fire: FireForm;
}

/** The nearest batch by both measures, side by side, and what neither can meet. */
export function SolutionsView({ study, near, aimed, fire }: SolutionsViewProps) {
  const [keeping, setKeeping] = useState<RecipeSolution | null>(null);
  const both = [near.byDistance, near.byError];
  return (
    <>
      {near.warnings.map((words) => (
        <Notice key={words} kind="caution">
          {withFormulas(words)}
        </Notice>
      ))}
      <section className="stack" aria-labelledby="nearest">
        <h2 id="nearest">Nearest batches</h2>
        <div className="pair">
          {both.map((solution) => (
            <Solution key={solution.metric} solution={solution} onKeep={() => setKeeping(solution)} />
          ))}
        </div>
        <SaveTable name="nearest-batches" table={nearestRecipes(near)} label="Download both recipes as CSV" />
      </section>
      <section className="stack" aria-labelledby="meets">
        <h2 id="meets">What they fire to</h2>
        <DataTable
          label="What they fire to"
          columns={COLUMNS}
          rows={near.byDistance.rows.map((row, i) => ({ byDistance: row, byError: near.byError.rows[i]! }))}
          rowKey={(row) => row.byDistance.oxide}
        />
        <SaveTable
          name="nearest-batches-fired"
          table={nearestFired(near)}
          label="Download what they fire to as CSV"
        />
        <p className="faint small">
          wt% closed over the target’s oxides. Not met: further than twice ± from the target; where the target
          came without ±, {100 * ASSUMED_SIGMA.share} % of it (at least {ASSUMED_SIGMA.least} wt%) is taken.
        </p>
      </section>
      <ShareFound study={study} near={near} aimed={aimed} fire={fire} />
      <KeepBatch
        study={study}
        solution={keeping}
        aimed={aimed}
        fire={fire}
        onClose={() => setKeeping(null)}
      />
    </>
  );
}

function Solution(at: { readonly solution: RecipeSolution; readonly onKeep: () => void }) {
  const { metric, lines, distance, error, how, proven, warnings } = at.solution;
  const { title, words } = METRICS[metric];
  return (
    <div className="sheet stack tight">
      <h3>{title}</h3>
      <p className="faint small">{words}</p>
      <table className="plain">
        <caption className="unseen">{`${title}: grams for 100 g of dry batch`}</caption>
        <thead>
          <tr>
            <th scope="col">Material</th>
            <th scope="col" className="numeric">
              g in 100 g dry
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ material, amount }) => (
            <tr key={material.id}>
              <th scope="row">{material.name}</th>
              <td className="numeric">{amount.toFixed(2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small">
        Distance {showSignificant(distance)} (log-ratio units), error {showSignificant(error)} σ
      </p>
      <p className="faint small">
        Chosen: {how}
        {proven ? '' : ' (not proven to be the best choice)'}.
      </p>
      {warnings.map((warning) => (
        <Notice key={warning} kind="caution">
          {withFormulas(warning)}
        </Notice>
      ))}
      <div>
        <Button onPress={at.onKeep} aria-label={`Keep this batch, found ${title.toLowerCase()}`}>
          Keep this batch
        </Button>
      </div>
    </div>
  );
}

interface Pair {
  readonly byDistance: RecipeRow;
  readonly byError: RecipeRow;
}

function FiredCell({ row }: { readonly row: RecipeRow }) {
  return (
    <>
      {row.fired.toFixed(2)} {row.judgement !== 'met' && <Tag kind="caution">{row.judgement}</Tag>}
    </>
  );
}

const COLUMNS: readonly Column<Pair>[] = [
  { id: 'oxide', label: 'Oxide', header: true, cell: (row) => showAnalyte(row.byDistance.oxide) },
  {
    id: 'target',
    label: 'Target, wt%',
    numeric: true,
    cell: ({ byDistance }) => <NumberWithUnit value={byDistance.target} uncertainty={byDistance.sigma} />,
  },
  {
    id: 'distance',
    label: 'By proportions',
    numeric: true,
    cell: (row) => <FiredCell row={row.byDistance} />,
  },
  { id: 'error', label: 'By error', numeric: true, cell: (row) => <FiredCell row={row.byError} /> },
  {
    id: 'because',
    label: 'Why not',
    prose: true,
    cell: (row) => <span className="small">{row.byDistance.because ?? row.byError.because ?? ''}</span>,
  },
];
