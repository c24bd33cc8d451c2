import { useState } from 'react';
import { Form } from 'react-aria-components';
import type { StoredMaterial } from '../../../../api/contract/material.ts';
import { HAZARDS, type Hazard } from '../../../../api/domain/batch/types.ts';
import { Button, LinkButton } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { OneOf, Tick } from '../../../parts/Tick.tsx';
import type { Draft } from '../../../parts/useDraft.ts';
import { useSaveMaterial } from '../../../queries/bench.ts';
import { benchPath } from '../paths.ts';
import { AnalysisPick } from './AnalysisPick.tsx';
import { MaterialPreview } from './MaterialPreview.tsx';
import { type MaterialForm, readMaterial } from './material-form.ts';
import { hazardWord } from './words.ts';

const KINDS = [
  { id: 'formula', label: 'Chemical formula', hint: 'a mineral or a bought powder' },
  { id: 'analysis', label: 'Analysis', hint: 'a clay, an ash, an ore' },
] as const;

interface MaterialEditorProps {
  readonly study: string;
  readonly material: StoredMaterial | null;
  readonly draft: Draft<MaterialForm>;
  readonly onSaved: () => void;
}

/** A material as typed, with what it will bring to a batch beneath. */
export function MaterialEditor({ study, material, draft, onSaved }: MaterialEditorProps) {
  const save = useSaveMaterial(study, material?.id ?? null);
  const [tried, setTried] = useState(false);
  const form = draft.value;
  const set = (part: Partial<MaterialForm>) => draft.set({ ...form, ...part });
  const read = readMaterial(form);
  const fault = typeof read === 'string' ? read : form.name.trim() ? null : 'A material needs a name.';
  return (
    <Form
      className="stack wide-gap"
      onSubmit={(event) => {
        event.preventDefault();
        setTried(true);
        if (fault === null && typeof read !== 'string') save.mutate(read, { onSuccess: onSaved });
      }}
    >
      {draft.restored && <Notice>What you had typed before is still here, not yet saved.</Notice>}
      <Field label="Name" value={form.name} onChange={(name) => set({ name })} isRequired />
      <OneOf label="Known by its" choices={KINDS} value={form.kind} onChange={(kind) => set({ kind })} />
      {form.kind === 'formula' ? (
        <FormulaFields form={form} set={set} />
      ) : (
        <>
          <AnalysisPick study={study} onPick={set} />
          <Field
            label="Analysis, wt% of the dry material"
            hint="One a line: oxide or element, wt%, ± one standard deviation if known. LOI is the loss on ignition; S is sulfide, SO3 sulfate."
            placeholder={'SiO2 60.2 0.4\nAl2O3 24.1\nLOI 8.5'}
            lines={8}
            value={form.values}
            onChange={(values) => set({ values })}
          />
        </>
      )}
      <NotesFields form={form} set={set} />
      {tried && fault && <Notice kind="error">{fault}</Notice>}
      <ErrorNotice error={save.error} title="Not saved" />
      <div className="row">
        <Button look="primary" type="submit" isPending={save.isPending}>
          Save the material
        </Button>
        <LinkButton to={benchPath(study, '/materials')}>Cancel</LinkButton>
        {draft.restored && <Button onPress={draft.clear}>Forget what was typed</Button>}
      </div>
      <MaterialPreview read={read} blank={form.kind === 'formula' ? !form.formula : !form.values} />
    </Form>
  );
}

interface Part {
  readonly form: MaterialForm;
  readonly set: (part: Partial<MaterialForm>) => void;
}

function FormulaFields({ form, set }: Part) {
  return (
    <div className="fields">
      <Field
        label="Formula"
        hint="Brackets, hydrates and fractions: 2PbCO3·Pb(OH)2, CaSO4.1/2H2O, Mg1.8Fe0.2SiO4"
        value={form.formula}
        onChange={(formula) => set({ formula })}
      />
      <Field
        label="Purity, least (wt%)"
        inputMode="decimal"
        value={form.low}
        onChange={(low) => set({ low })}
      />
      <Field
        label="Purity, most (wt%)"
        hint="Empty when it is one figure"
        inputMode="decimal"
        value={form.high}
        onChange={(high) => set({ high })}
      />
      <Field
        label="The rest is"
        hint="A formula such as SiO2; empty when unknown"
        value={form.gangue}
        onChange={(gangue) => set({ gangue })}
      />
    </div>
  );
}

function NotesFields({ form, set }: Part) {
  const toggle = (hazard: Hazard, on: boolean) =>
    set({ hazards: on ? [...form.hazards, hazard] : form.hazards.filter((one) => one !== hazard) });
  return (
    <>
      <div className="fields">
        <Field
          label="Price (a kilogram, your currency)"
          inputMode="decimal"
          value={form.price}
          onChange={(price) => set({ price })}
        />
        <Field
          label="On hand (g)"
          inputMode="decimal"
          value={form.onHand}
          onChange={(onHand) => set({ onHand })}
        />
        <Field label="Source" value={form.source} onChange={(source) => set({ source })} />
        <Field
          label="Handling"
          lines={2}
          whole
          value={form.handling}
          onChange={(handling) => set({ handling })}
        />
      </div>
      <fieldset className="choices tick-across">
        <legend className="label">Hazards besides those that its chemistry shows</legend>
        <div className="row">
          {HAZARDS.map((hazard) => (
            <Tick
              key={hazard}
              isSelected={form.hazards.includes(hazard)}
              onChange={(on) => toggle(hazard, on)}
            >
              {hazardWord(hazard)}
            </Tick>
          ))}
        </div>
      </fieldset>
    </>
  );
}
