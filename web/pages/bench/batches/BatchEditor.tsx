import { useState } from 'react';
import { Form } from 'react-aria-components';
import type { Batch } from '../../../../api/contract/batch.ts';
import { linesOfEntries } from '../../../../api/domain/batch/bench-shelf.ts';
import { Button } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import type { Draft } from '../../../parts/useDraft.ts';
import { useSaveBatch } from '../../../queries/bench.ts';
import { BalanceTable } from '../fired/BalanceTable.tsx';
import { FiredResult } from '../fired/FiredResult.tsx';
import { FireFields } from '../parts/FireFields.tsx';
import { LinesEditor } from '../parts/LinesEditor.tsx';
import { SaveTable } from '../parts/SaveTable.tsx';
import type { Bench } from '../parts/WithShelf.tsx';
import { recipeTable } from '../tables.ts';
import type { BatchForm } from './batch-form.ts';
import { MadeOfIt } from './MadeOfIt.tsx';
import { ScaleTo } from './ScaleTo.tsx';
import { UnitChoice } from './UnitChoice.tsx';
import { useFired } from './useFired.ts';

interface BatchEditorProps {
  readonly study: string;
  readonly bench: Bench;
  /** The batch to change; null for a new one. */
  readonly batch: Batch | null;
  readonly draft: Draft<BatchForm>;
  readonly onSaved: (batch: Batch) => void;
}

/** A batch as typed, with what it becomes beneath, at every keystroke. */
export function BatchEditor({ study, bench, batch, draft, onSaved }: BatchEditorProps) {
  const save = useSaveBatch(study, batch?.id ?? null);
  const [tried, setTried] = useState<string | null>(null);
  const form = draft.value;
  const set = (part: Partial<BatchForm>) => draft.set({ ...form, ...part });
  const { read, outcome } = useFired(form, bench);
  const recipe = linesOfEntries(
    read.lines.filter(({ material }) => bench.shelf.materials.has(material)),
    bench.shelf,
  );
  const submit = () => {
    const fault = faultOf(form, read.wrong.size, outcome?.reason ?? null);
    setTried(fault);
    if (fault || !outcome) return;
    const { name, unit, note, specimens } = form;
    const json = { name, unit, note, specimens: [...specimens], lines: read.lines, fire: read.fire };
    save.mutate({ ...json, target: batch?.target ?? null }, { onSuccess: onSaved });
  };
  return (
    <Form
      className="bench-split"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <div className="stack wide-gap">
        {draft.restored && <Notice>What you had typed before is still here, not yet saved.</Notice>}
        <div className="fields">
          <Field label="Name" value={form.name} onChange={(name) => set({ name })} isRequired />
          <UnitChoice unit={form.unit} onChange={(unit) => set({ unit })} />
        </div>
        <section className="stack" aria-labelledby="weighed">
          <h2 id="weighed">{form.unit === 'g' ? 'Weighed' : 'Parts by mass'}</h2>
          <LinesEditor
            label={form.unit === 'g' ? 'Weighed' : 'Parts by mass'}
            bench={bench}
            rows={form.rows}
            onChange={(rows) => set({ rows })}
            wrong={read.wrong}
            unit={form.unit}
          />
          {recipe.length > 0 && (
            <SaveTable
              name={`recipe ${form.name}`.trim()}
              table={recipeTable(recipe, form.unit)}
              label="Download the recipe as CSV"
            />
          )}
          <ScaleTo
            form={form}
            bench={bench}
            onScaled={(rows) => set({ rows, unit: 'g' })}
            ready={read.wrong.size === 0 && outcome?.value != null}
            read={read}
          />
        </section>
        <section className="stack" aria-labelledby="firing">
          <h2 id="firing">Firing</h2>
          <FireFields fire={form.fire} onChange={(fire) => set({ fire })} />
        </section>
        <MadeOfIt study={study} chosen={form.specimens} onChange={(specimens) => set({ specimens })} />
        <Field label="Note" lines={2} value={form.note} onChange={(note) => set({ note })} />
        {tried && <Notice kind="error">{tried}</Notice>}
        <ErrorNotice error={save.error} title="Not saved" />
        <div className="row">
          <Button look="primary" type="submit" isPending={save.isPending}>
            Save the batch
          </Button>
          {draft.restored && <Button onPress={draft.clear}>Forget what was typed</Button>}
        </div>
      </div>
      <div className="stack wide-gap">
        {read.wrong.size > 0 && (
          <p className="faint">Lines that cannot be read are left out of what follows.</p>
        )}
        {outcome?.reason && <Notice kind="error">{outcome.reason}</Notice>}
        {outcome === null && (
          <p className="faint">Choose materials and amounts: what they fire to appears here at once.</p>
        )}
        {outcome?.value && <FiredResult result={outcome.value} />}
      </div>
      {outcome?.value && (
        <section className="stack across" aria-labelledby="balance">
          <h2 id="balance">Mass balance, line by line</h2>
          <BalanceTable fired={outcome.value.fired} />
        </section>
      )}
      {outcome?.value && <Cautions hazards={outcome.value.fired.hazards} />}
    </Form>
  );
}

function faultOf({ name }: BatchForm, wrong: number, reason: string | null): string | null {
  if (!name.trim()) return 'A batch needs a name.';
  if (wrong > 0) return 'Every line needs to be read first: see what is wrong with the marked ones.';
  return reason;
}
