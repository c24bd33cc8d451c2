import { useDeferredValue, useMemo } from 'react';
import type { WareGroup } from '../../../../api/contract/ware-group.ts';
import { nearestBatch } from '../../../../api/domain/batch/nearest-batch.ts';
import type { RecipeProblem } from '../../../../api/domain/batch/recipe-model.ts';
import { Cautions } from '../../../parts/Cautions.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Tick } from '../../../parts/Tick.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import type { PageProps } from '../../../paths.ts';
import { useGroups } from '../../../queries/groups.ts';
import { attempt } from '../parts/attempt.ts';
import { FireFields } from '../parts/FireFields.tsx';
import { type Bench, WithShelf } from '../parts/WithShelf.tsx';
import { MaterialsChoice } from './MaterialsChoice.tsx';
import { MissingTable } from './MissingTable.tsx';
import { SetSection } from './SetSection.tsx';
import { SolutionsView } from './SolutionsView.tsx';
import { TargetFields } from './TargetFields.tsx';
import { blankTarget, readMeans, type TargetForm } from './target-form.ts';
import { type AimState, useAim } from './useAim.ts';

/** From a paint back to the scale. */
export function TargetPage({ study }: PageProps) {
  const groups = useGroups(study);
  return (
    <>
      <PageHead
        title="Target to batch"
        lead="The batch of chosen materials whose fired paint comes nearest to a ware group, a sherd or figures of your own."
      />
      <WithShelf study={study}>
        {(bench) => (
          <Loaded query={groups} what="the ware groups">
            {(rows) => <Target study={study} bench={bench} groups={rows} />}
          </Loaded>
        )}
      </WithShelf>
    </>
  );
}

interface TargetProps {
  readonly study: string;
  readonly bench: Bench;
  readonly groups: readonly WareGroup[];
}

function Target({ study, bench, groups }: TargetProps) {
  const start = { ...blankTarget(bench), group: groups[0]?.id ?? null };
  const draft = useDraft<TargetForm>(`target.${study}`, start);
  const form = draft.value;
  const set = (part: Partial<TargetForm>) => draft.set({ ...form, ...part });
  const settled = useDeferredValue(form);
  const aim = useAim(study, settled, groups);
  const means = useMemo(() => readMeans(settled, bench), [settled, bench]);
  const problem = useMemo((): RecipeProblem | null => {
    if (!aim.aimed || typeof means === 'string') return null;
    const { parts, sigma } = aim.aimed;
    return { ...means, target: { parts, sigma } };
  }, [aim, means]);
  const near = useMemo(() => problem && attempt(() => nearestBatch(problem)), [problem]);
  const fault = typeof means === 'string' ? means : (aim.reason ?? near?.reason ?? null);
  return (
    <>
      <div className="bench-split">
        <div className="stack wide-gap">
          <TargetFields study={study} groups={groups} form={form} set={set} />
          <MaterialsChoice bench={bench} form={form} set={set} />
          <section className="stack" aria-labelledby="target-fire">
            <h2 id="target-fire">Firing</h2>
            <FireFields fire={form.fire} onChange={(fire) => set({ fire })} />
          </section>
        </div>
        <div className="stack wide-gap">
          {fault && <Notice kind="error">{fault}</Notice>}
          <Waiting aim={aim} />
          {aim.aimed && aim.aimed.remarks.length > 0 && (
            <Notice title={`Target: ${aim.aimed.name}`}>
              <ul>
                {aim.aimed.remarks.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            </Notice>
          )}
          {aim.aimed && <OxidesAimed offered={aim.aimed.offered} form={form} set={set} />}
          {near?.value && aim.aimed && (
            <SolutionsView study={study} near={near.value} aimed={aim.aimed} fire={settled.fire} />
          )}
          {problem && near?.value && <MissingTable problem={problem} bench={bench} form={form} set={set} />}
        </div>
      </div>
      {near?.value && typeof means !== 'string' && (
        <SetSection key={form.group} means={means} spread={aim.spread} source={form.source} />
      )}
      {near?.value && (
        <Cautions hazards={near.value.byDistance.lines.flatMap((line) => line.material.hazards)} />
      )}
    </>
  );
}

function OxidesAimed(at: {
  readonly offered: readonly string[];
  readonly form: TargetForm;
  readonly set: (part: Partial<TargetForm>) => void;
}) {
  const { leftOut } = at.form;
  const toggle = (oxide: string, on: boolean) =>
    at.set({ leftOut: on ? leftOut.filter((one) => one !== oxide) : [...leftOut, oxide] });
  return (
    <fieldset className="choices tick-across">
      <legend className="label">Oxides aimed at</legend>
      <div className="row">
        {at.offered.map((oxide) => (
          <Tick key={oxide} isSelected={!leftOut.includes(oxide)} onChange={(on) => toggle(oxide, on)}>
            {showAnalyte(oxide)}
          </Tick>
        ))}
      </div>
    </fieldset>
  );
}

function Waiting({ aim }: { readonly aim: AimState }) {
  if (aim.waiting)
    return (
      <p className="waiting" role="status">
        Reading the target …
      </p>
    );
  if (aim.aimed || aim.reason) return null;
  return <p className="faint">Choose what to aim at: the nearest batch appears here.</p>;
}
