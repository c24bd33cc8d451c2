import type { FiringRecord, NewFiring } from '../../../../api/contract/firing.ts';
import { sameStages, stageInWords } from '../../../../api/domain/firing/stages.ts';
import { AIRS } from '../../../../api/domain/firing/types.ts';
import { Button } from '../../../parts/Button.tsx';
import { Dialog } from '../../../parts/Dialog.tsx';
import { Field } from '../../../parts/Field.tsx';
import { FormDialog } from '../../../parts/FormDialog.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { Select } from '../../../parts/Select.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useSaveFiring } from '../../../queries/fire.ts';
import { usePut } from '../parts/usePut.ts';

interface FiringDialogProps {
  readonly study: string;
  readonly firing: FiringRecord | 'new' | null;
  readonly onClose: () => void;
}

export function FiringDialog({ study, firing, onClose }: FiringDialogProps) {
  return (
    <Dialog
      title={firing === 'new' ? 'New firing' : 'Change the firing'}
      open={firing !== null}
      onClose={onClose}
    >
      {firing !== null && (
        <FiringForm study={study} firing={firing === 'new' ? null : firing} onClose={onClose} />
      )}
    </Dialog>
  );
}

const AIR_CHOICES = AIRS.map((id) => ({ id, label: `${id[0]!.toUpperCase()}${id.slice(1)}` }));
type Stage = NewFiring['stages'][number];
interface Fields extends Pick<NewFiring, 'name' | 'date' | 'place' | 'fuel' | 'weather' | 'note'> {
  /** As changed by hand, and as they were when that began; null while they stay as the fire's notes have them. */
  readonly stages: { readonly were: readonly Stage[]; readonly now: Stage[] } | null;
}
const BLANK: Fields = { name: '', date: null, place: '', fuel: '', weather: '', note: '', stages: null };

function fieldsOf(firing: FiringRecord | null): Fields {
  if (!firing) return BLANK;
  const { name, date, place, fuel, weather, note } = firing;
  return { name, date, place, fuel, weather, note, stages: null };
}

function FiringForm(at: {
  readonly study: string;
  readonly firing: FiringRecord | null;
  readonly onClose: () => void;
}) {
  const save = useSaveFiring(at.study, at.firing?.id ?? null);
  const draft = useDraft(`firing.fields.${at.study}.${at.firing?.id ?? 'new'}`, fieldsOf(at.firing));
  const { stages, ...fields } = draft.value;
  const set = usePut(draft);
  const there = at.firing?.stages ?? [];
  const sent = stages ? { ...fields, stages: stages.now, stagesWere: [...stages.were] } : fields;
  const leave = () => {
    draft.clear();
    at.onClose();
  };
  return (
    <FormDialog
      onSubmit={() => save.mutate(sent, { onSuccess: leave })}
      onCancel={leave}
      save={at.firing ? 'Save' : 'Record the firing'}
      busy={save.isPending}
      error={save.error}
      restored={draft.restored}
    >
      <Field label="Name" value={fields.name} onChange={(name) => set({ name })} isRequired autoFocus />
      <div className="fields">
        <Field
          label="Day"
          hint="YYYY-MM-DD, or a month or year"
          value={fields.date ?? ''}
          onChange={(date) => set({ date: date.trim() || null })}
        />
        <Field label="Place" value={fields.place} onChange={(place) => set({ place })} />
        <Field label="Fuel" value={fields.fuel} onChange={(fuel) => set({ fuel })} />
        <Field label="Weather" value={fields.weather} onChange={(weather) => set({ weather })} />
      </div>
      <Stages
        stages={stages?.now ?? there}
        onChange={(now) => set({ stages: { were: stages?.were ?? there, now } })}
      />
      {stages && (save.isIdle || save.isError) && !sameStages(stages.were, there) && (
        <Notice kind="caution" title="Other stages were noted meanwhile">
          <p>They are now: {there.map(stageInWords).join(', ') || 'none'}.</p>
          <Button onPress={() => set({ stages: null })}>Take them as they are now</Button>
        </Notice>
      )}
      <Field label="Notes" lines={3} value={fields.note} onChange={(note) => set({ note })} />
    </FormDialog>
  );
}

function Stages(at: { readonly stages: readonly Stage[]; readonly onChange: (stages: Stage[]) => void }) {
  const put = (i: number, part: Partial<Stage>) =>
    at.onChange(at.stages.map((stage, j) => (i === j ? { ...stage, ...part } : stage)));
  const from = at.stages.at(-1)?.to ?? 0;
  return (
    <fieldset className="choices stack">
      <legend className="label">Stages of air</legend>
      {at.stages.map((stage, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: stages have no identity but their place
        <div key={i} className="row base">
          <Select
            label={`Air of stage ${i + 1}`}
            choices={AIR_CHOICES}
            value={stage.air}
            onChange={(air) => put(i, { air })}
          />
          <NumberField
            label={`Stage ${i + 1} from`}
            unit="min"
            min={0}
            value={stage.from / 60}
            onChange={(m) => put(i, { from: 60 * (m ?? 0) })}
          />
          <NumberField
            label={`Stage ${i + 1} to`}
            unit="min"
            min={0}
            value={stage.to / 60}
            onChange={(m) => put(i, { to: 60 * (m ?? 0) })}
          />
          <Button onPress={() => at.onChange(at.stages.filter((_, j) => j !== i))}>
            Take out stage {i + 1}
          </Button>
        </div>
      ))}
      <div>
        <Button
          onPress={() => at.onChange([...at.stages, { air: 'oxidising', from, to: from + 3600, note: null }])}
        >
          Add a stage
        </Button>
      </div>
    </fieldset>
  );
}
