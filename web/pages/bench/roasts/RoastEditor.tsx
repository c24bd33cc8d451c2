import { useMemo, useState } from 'react';
import { Form } from 'react-aria-components';
import type { StoredRoast } from '../../../../api/contract/roast.ts';
import { roastOfEntry } from '../../../../api/domain/batch/bench-shelf.ts';
import type { RoastLooks } from '../../../../api/domain/batch/roast-judgement.ts';
import { Button, LinkButton } from '../../../parts/Button.tsx';
import { Cautions } from '../../../parts/Cautions.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import { Tick } from '../../../parts/Tick.tsx';
import type { Draft } from '../../../parts/useDraft.ts';
import { useSaveRoast } from '../../../queries/bench.ts';
import { attempt } from '../parts/attempt.ts';
import { LinesEditor } from '../parts/LinesEditor.tsx';
import type { Bench } from '../parts/WithShelf.tsx';
import { benchPath } from '../paths.ts';
import { RoastResultView, roastHazards } from './RoastResultView.tsx';
import { type RoastForm, readRoast } from './roast-form.ts';

const POWDERS = [
  { id: 'none', label: 'None' },
  { id: 'white', label: 'White' },
  { id: 'yellow', label: 'Yellow' },
  { id: 'orange', label: 'Orange' },
] as const;

interface RoastEditorProps {
  readonly study: string;
  readonly bench: Bench;
  readonly roast: StoredRoast | null;
  readonly draft: Draft<RoastForm>;
  readonly onSaved: (roast: StoredRoast) => void;
}

/** A roast as weighed, with what the weighing says beneath. */
export function RoastEditor({ study, bench, roast, draft, onSaved }: RoastEditorProps) {
  const save = useSaveRoast(study, roast?.id ?? null);
  const [tried, setTried] = useState<string | null>(null);
  const form = draft.value;
  const set = (part: Partial<RoastForm>) => draft.set({ ...form, ...part });
  const read = useMemo(() => readRoast(form, bench), [form, bench]);
  const outcome = useMemo(
    () => read.roast && attempt(() => roastOfEntry({ ...read.roast!, id: 'typed' }, bench.shelf)),
    [read, bench],
  );
  const submit = () => {
    const fault = form.name.trim() ? (read.fault ?? outcome?.reason ?? null) : 'A roast needs a name.';
    const missing = read.roast ? null : 'A roast needs a charge and the mass that came out.';
    setTried(fault ?? missing);
    if (fault || !read.roast) return;
    save.mutate(read.roast, { onSuccess: onSaved });
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
          <Field label="Date" type="date" value={form.date} onChange={(date) => set({ date })} />
        </div>
        <section className="stack" aria-labelledby="charge">
          <h2 id="charge">Charge</h2>
          <p className="faint">Add quartz to frit: oxide that dissolves in the glass counts as oxide.</p>
          <LinesEditor
            label="Charge"
            bench={bench}
            rows={form.rows}
            onChange={(rows) => set({ rows })}
            wrong={read.wrong}
            unit="g"
            without={roast?.id}
          />
        </section>
        <Weighings form={form} set={set} />
        <Looks form={form} set={set} />
        <Field label="Note" lines={2} value={form.note} onChange={(note) => set({ note })} />
        {tried && <Notice kind="error">{tried}</Notice>}
        <ErrorNotice error={save.error} title="Not saved" />
        <div className="row">
          <Button look="primary" type="submit" isPending={save.isPending}>
            Save the roast
          </Button>
          <LinkButton to={benchPath(study, '/roasts')}>Cancel</LinkButton>
          {draft.restored && <Button onPress={draft.clear}>Forget what was typed</Button>}
        </div>
      </div>
      <div className="stack wide-gap">
        {(read.fault ?? outcome?.reason) && <Notice kind="error">{read.fault ?? outcome?.reason}</Notice>}
        {!read.roast && !read.fault && (
          <p className="faint">Give the charge and the mass that came out: what can be in it appears here.</p>
        )}
        {outcome?.value && <RoastResultView result={outcome.value} looks={form.seen ? form.looks : null} />}
      </div>
      <Cautions hazards={outcome?.value ? roastHazards(outcome.value) : ['lead', 'sulfur', 'fire']} />
    </Form>
  );
}

interface Part {
  readonly form: RoastForm;
  readonly set: (part: Partial<RoastForm>) => void;
}

function Weighings({ form, set }: Part) {
  const bind = (key: 'massOut' | 'weighing' | 'celsius' | 'hours' | 'sulfur' | 'sulfurSigma') => ({
    value: form[key],
    onChange: (text: string) => set({ [key]: text }),
    inputMode: 'decimal' as const,
  });
  return (
    <div className="fields narrow">
      <Field label="Mass out (g)" {...bind('massOut')} />
      <Field label="Weighing within ± (g)" {...bind('weighing')} />
      <Field label="Temperature (°C)" {...bind('celsius')} />
      <Field label="Hours at it" {...bind('hours')} />
      <Field label="Sulfur read (wt%)" placeholder="not read" {...bind('sulfur')} />
      <Field label="± of the reading (1σ, wt%)" {...bind('sulfurSigma')} />
    </div>
  );
}

function Looks({ form, set }: Part) {
  const look = (part: Partial<RoastLooks>) => set({ looks: { ...form.looks, ...part } });
  return (
    <fieldset className="choices tick-across">
      <legend className="label">Looks, once broken up</legend>
      <Tick isSelected={form.seen} onChange={(seen) => set({ seen })}>
        It was broken up and looked at
      </Tick>
      {form.seen && (
        <div className="stack tight">
          <div className="row">
            <Tick isSelected={form.looks.lump} onChange={(lump) => look({ lump })}>
              One hard lump
            </Tick>
            <Tick isSelected={form.looks.glitters} onChange={(glitters) => look({ glitters })}>
              Glitters inside
            </Tick>
          </div>
          <Select
            label="Powder on it"
            choices={POWDERS}
            value={form.looks.powder}
            onChange={(powder) => look({ powder })}
          />
        </div>
      )}
    </fieldset>
  );
}
