import { useState } from 'react';
import type { Batch } from '../../../../api/contract/batch.ts';
import type { Specimen } from '../../../../api/contract/specimen.ts';
import type { FractionEstimate } from '../../../../api/domain/slip/types.ts';
import { Cautions } from '../../../parts/Cautions.tsx';
import { Field } from '../../../parts/Field.tsx';
import { withFormulas } from '../../../parts/formulas.ts';
import { Loaded } from '../../../parts/Loaded.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { readNumber } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Select } from '../../../parts/Select.tsx';
import { useAnalyses } from '../../../queries/analyses.ts';
import { useBatches } from '../../../queries/bench.ts';
import { useLookups } from '../../../queries/lookups.ts';
import { useSpecimens } from '../../../queries/specimens.ts';
import { Gone } from '../batches/BatchPage.tsx';
import { fireHere } from '../fired/compute.ts';
import { attempt } from '../parts/attempt.ts';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { batchPath } from '../paths.ts';
import { amountsOf } from '../target/aim.ts';
import { BatchFigure } from './BatchFigure.tsx';
import { setBeside, shareFromTile } from './compare.ts';
import { DifferenceTable } from './DifferenceTable.tsx';
import { EvaporationCheck } from './EvaporationCheck.tsx';

interface MeasuredPageProps {
  readonly study: string;
  readonly batch: string;
}

/** What a tile turned out to be, beside what its batch was to be. */
export function MeasuredPage({ study, batch: id }: MeasuredPageProps) {
  const batches = useBatches(study);
  const replicas = useSpecimens(study, { kind: 'replica', limit: 500 });
  return (
    <WithShelf study={study}>
      {(bench) => (
        <Loaded query={batches} what="the batch" page>
          {(rows) => {
            const batch = rows.find((one) => one.id === id);
            if (!batch) return <Gone study={study} />;
            return (
              <>
                <PageHead
                  title={`${batch.name}: predicted and measured`}
                  up={{ to: batchPath(study, id), label: batch.name }}
                  lead="The difference between a fired tile and its batch goes to slip, to lead that evaporated, or stays unexplained."
                />
                <Loaded query={replicas} what="the replicas">
                  {({ rows: specimens }) => (
                    <Beside study={study} bench={bench} batch={batch} replicas={specimens} />
                  )}
                </Loaded>
              </>
            );
          }}
        </Loaded>
      )}
    </WithShelf>
  );
}

interface BesideProps {
  readonly study: string;
  readonly bench: Bench;
  readonly batch: Batch;
  readonly replicas: readonly Specimen[];
}

function Beside({ study, bench, batch, replicas }: BesideProps) {
  const painted = replicas.filter((one) => one.measured.includes('paint'));
  const made = painted.filter((one) => batch.specimens.includes(one.id));
  const [chosen, setChosen] = useState<string | null>(made[0]?.id ?? null);
  const [share, setShare] = useState('');
  const [spread, setSpread] = useState('');
  if (painted.length === 0)
    return <Notice>No replica’s paint has been analysed yet: bring in the analysis of a fired tile.</Notice>;
  const choices = [...made, ...painted.filter((one) => !made.includes(one))].map((one) => ({
    id: one.id,
    label: one.label,
    hint: made.includes(one) ? 'made of this batch' : undefined,
  }));
  return (
    <div className="stack wide-gap">
      <div className="fields">
        <Select label="Replica" choices={choices} value={chosen} onChange={setChosen} />
        <Field
          label="Slip’s share of the reading (%)"
          placeholder="told by the tile itself"
          inputMode="decimal"
          value={share}
          onChange={setShare}
        />
        <Field label="± of the share (1σ, %)" inputMode="decimal" value={spread} onChange={setSpread} />
      </div>
      {chosen ? (
        <Compared
          {...{ study, bench, batch, share, spread, specimen: chosen }}
          label={painted.find((one) => one.id === chosen)?.label ?? ''}
        />
      ) : (
        <p className="faint">
          Choose a replica. Those painted with this batch come first once they are ticked on its page.
        </p>
      )}
    </div>
  );
}

interface ComparedProps extends Omit<BesideProps, 'replicas'> {
  readonly specimen: string;
  readonly label: string;
  /** As typed; empty lets the tile tell. */
  readonly share: string;
  readonly spread: string;
}

function Compared({ study, bench, batch, specimen, label, share, spread }: ComparedProps) {
  const analyses = useAnalyses(study, { specimen, limit: 500 });
  const techniques = useLookups().data?.techniques ?? [];
  const errors = Object.fromEntries(techniques.map((one) => [one.code, one.relativeError]));
  return (
    <Loaded query={analyses} what="its analyses">
      {({ rows }) => {
        const of = (measured: string) => rows.filter((row) => row.measured === measured);
        const slips = of('slip');
        const result = attempt(() => {
          const { fired } = fireHere(batch.lines, batch.fire, bench.shelf);
          const slip = slips.length > 0 ? amountsOf(slips, errors) : null;
          const paint = amountsOf(of('paint'), errors);
          const told = share.trim() || !slip ? null : shareFromTile({ fired, paint, slip });
          const typed = { f: percent(share), sigma: percent(spread) };
          const f = told ? { f: Math.min(told.f, 0.99), sigma: told.sigma } : typed;
          const tile = { label, spots: of('paint').length, amounts: paint };
          return { fired, told, tile, split: setBeside({ fired, paint, slip, share: f }) };
        });
        if (!result.value) return <Notice kind="error">{result.reason}</Notice>;
        const { split, fired, told, tile } = result.value;
        return (
          <>
            {slips.length === 0 && (
              <Notice kind="caution">
                The slip of this replica has not been analysed, so none of the difference can go to it: the
                share above is not used.
              </Notice>
            )}
            {told && <ShareTold told={told} />}
            <Notice title="What the difference says">
              {split.words.map((words) => (
                <p key={words}>{withFormulas(words)}</p>
              ))}
            </Notice>
            <DifferenceTable split={split} />
            <BatchFigure study={study} batch={batch} fired={fired} tile={{ ...tile, id: specimen }} />
            <EvaporationCheck lost={split.leadLost} fired={fired} celsius={batch.fire.celsius} />
            <Cautions hazards={fired.hazards} />
          </>
        );
      }}
    </Loaded>
  );
}

/** Nothing typed counts as zero; what is no number is refused where it is used. */
const percent = (typed: string) => (typed.trim() ? (readNumber(typed) ?? Number.NaN) / 100 : 0);

function ShareTold({ told }: { readonly told: FractionEstimate }) {
  const show = (share: number) => (100 * share).toFixed(1);
  return (
    <Notice title={`Slip’s share, told by the tile: ${show(told.f)} ± ${show(told.sigma)} %`}>
      <p>
        95 % interval {show(told.low)} to {show(told.high)} %, from every oxide but lead and sulfur, which may
        leave in the fire. Type a share above to use another.
      </p>
      {[...(told.cannotTell ? [told.cannotTell] : []), ...told.warnings].map((words) => (
        <p key={words}>{words}</p>
      ))}
    </Notice>
  );
}
