import { DEFECTS, type Tile, type ZoneRecord } from '../../../../api/contract/tile.ts';
import type { Grade } from '../../../../api/domain/trials/types.ts';
import { Dialog } from '../../../parts/Dialog.tsx';
import { Field } from '../../../parts/Field.tsx';
import { FormDialog } from '../../../parts/FormDialog.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { OneOf, Tick } from '../../../parts/Tick.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useChangeZone } from '../../../queries/fire.ts';
import { usePut } from '../parts/usePut.ts';

const GLOSS = [
  { id: 'open', label: 'Not judged' },
  { id: 'matt', label: 'Matt' },
  { id: 'satin', label: 'Satin' },
  { id: 'glossy', label: 'Glossy' },
] as const;

interface ZoneDialogProps {
  readonly study: string;
  readonly tile: Tile;
  readonly zone: ZoneRecord | null;
  readonly onClose: () => void;
}

/** What was put on one zone, and what came out of the fire. */
export function ZoneDialog(at: ZoneDialogProps) {
  return (
    <Dialog
      title={`Zone ${at.zone?.label ?? ''} of ${at.tile.label}`}
      open={at.zone !== null}
      onClose={at.onClose}
    >
      {at.zone && <ZoneForm {...at} zone={at.zone} />}
    </Dialog>
  );
}

type Fields = Pick<
  ZoneRecord,
  'coats' | 'micrometres' | 'grade' | 'glassyShare' | 'colour' | 'defects' | 'note'
>;
const fieldsOf = ({ coats, micrometres, grade, glassyShare, colour, defects, note }: ZoneRecord): Fields => ({
  ...{ coats, micrometres, grade, glassyShare, colour, defects, note },
});

function ZoneForm({ study, tile, zone, onClose }: ZoneDialogProps & { readonly zone: ZoneRecord }) {
  const save = useChangeZone(study, tile.id);
  const draft = useDraft<Fields>(`zone.${zone.id}`, fieldsOf(zone));
  const fields = draft.value;
  const set = usePut(draft);
  const leave = () => {
    draft.clear();
    onClose();
  };
  const toggle = (defect: string, on: boolean) =>
    set({ defects: on ? [...fields.defects, defect] : fields.defects.filter((one) => one !== defect) });
  return (
    <FormDialog
      onSubmit={() => save.mutate({ zone: zone.id, change: fields }, { onSuccess: leave })}
      onCancel={leave}
      save="Save the zone"
      busy={save.isPending}
      error={save.error}
      restored={draft.restored}
    >
      <div className="fields">
        <NumberField
          label="Coats"
          min={0}
          max={50}
          value={fields.coats}
          onChange={(coats) => set({ coats })}
        />
        <NumberField
          label="Thickness"
          unit="µm"
          {...{ min: 0, max: 5000 }}
          value={fields.micrometres}
          onChange={(micrometres) => set({ micrometres })}
        />
      </div>
      <OneOf
        label="Gloss"
        choices={GLOSS}
        value={fields.grade ?? 'open'}
        onChange={(id) => set({ grade: id === 'open' ? null : (id as Grade) })}
      />
      <div className="fields">
        <NumberField
          label="Glassy share of the area"
          unit="%"
          {...{ min: 0, max: 100 }}
          value={fields.glassyShare === null ? null : Math.round(1000 * fields.glassyShare) / 10}
          onChange={(share) => set({ glassyShare: share === null ? null : share / 100 })}
        />
        <Field label="Colour" value={fields.colour} onChange={(colour) => set({ colour })} />
      </div>
      <fieldset className="choices">
        <legend className="label">Defects</legend>
        <div className="row">
          {DEFECTS.map((defect) => (
            <Tick
              key={defect}
              isSelected={fields.defects.includes(defect)}
              onChange={(on) => toggle(defect, on)}
            >
              {defect}
            </Tick>
          ))}
        </div>
      </fieldset>
      <Field label="Note" lines={2} value={fields.note} onChange={(note) => set({ note })} />
    </FormDialog>
  );
}
