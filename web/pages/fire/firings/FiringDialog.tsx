import { type FiringRecord, type NewFiring, THRESHOLDS } from '../../../../api/contract/firing.ts';
import { AIRS } from '../../../../api/domain/firing/types.ts';
import { Button } from '../../../parts/Button.tsx';
import { Dialog } from '../../../parts/Dialog.tsx';
import { Field } from '../../../parts/Field.tsx';
import { FormDialog } from '../../../parts/FormDialog.tsx';
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
const BLANK: NewFiring = {
  ...{ name: '', date: null, place: '', fuel: '', weather: '', note: '' },
  ...{ thresholds: THRESHOLDS, stages: [], readings: [] },
};

function fieldsOf(firing: FiringRecord | null): NewFiring {
  if (!firing) return BLANK;
  const { name, date, place, fuel, weather, note, thresholds, stages, readings } = firing;
  const taken = readings.map(({ bounds: _, reason: __, ...kept }) => kept);
  return { name, date, place, fuel, weather, note, thresholds, stages, readings: taken };
}

function FiringForm(at: {
  readonly study: string;
  readonly firing: FiringRecord | null;
  readonly onClose: () => void;
}) {
  const save = useSaveFiring(at.study, at.firing?.id ?? null);
  const draft = useDraft(`firing.${at.study}.${at.firing?.id ?? 'new'}`, fieldsOf(at.firing));
  const fields = draft.value;
  const set = usePut(draft);
  const leave = () => {
    draft.clear();
    at.onClose();
  };
  return (
    <FormDialog
      onSubmit={() => save.mutate(fields, { onSuccess: leave })}
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
      <Stages stages={fields.stages} onChange={(stages) => set({ stages })} />
      <Field label="Notes" lines={3} value={fields.note} onChange={(note) => set({ note })} />
    </FormDialog>
  );
}

type Stage = NewFiring['stages'][number];

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
