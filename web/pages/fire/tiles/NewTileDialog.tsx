import { Dialog } from '../../../parts/Dialog.tsx';
import { Field } from '../../../parts/Field.tsx';
import { FormDialog } from '../../../parts/FormDialog.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { Select } from '../../../parts/Select.tsx';
import { OneOf } from '../../../parts/Tick.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useFirings, useMakeTile, useTiles } from '../../../queries/fire.ts';
import { useSpecimens } from '../../../queries/specimens.ts';
import { usePut } from '../parts/usePut.ts';

const NEW = 'new';
export const NO_FIRE = 'none';
const GRID = 'grid';
const DRAWN = 'drawn';
const LAYOUTS = [
  { id: GRID, label: 'In a grid' },
  { id: DRAWN, label: 'Drawn on a picture, as on a pot' },
] as const;
const BLANK = {
  layout: GRID as string,
  replica: NEW,
  label: '',
  firing: NO_FIRE,
  place: '',
  rows: 2,
  columns: 3,
};
interface Open {
  readonly study: string;
  readonly open: boolean;
  readonly onClose: () => void;
}

/** Zones on a new replica, or on one that is already in the study: a grid of them, or none until they are drawn. */
export function NewTileDialog(at: Open) {
  return (
    <Dialog title="New tile or pot" open={at.open} onClose={at.onClose}>
      {at.open && <TileForm {...at} />}
    </Dialog>
  );
}

function TileForm({ study, onClose }: Open) {
  const save = useMakeTile(study);
  const draft = useDraft(`tile.${study}.new`, BLANK);
  const taken = new Set((useTiles(study).data ?? []).map((tile) => tile.id));
  const replicas = (useSpecimens(study, { kind: 'replica', limit: 500 }).data?.rows ?? []).filter(
    (row) => !taken.has(row.id),
  );
  const fields = draft.value;
  const set = usePut(draft);
  const drawn = fields.layout === DRAWN;
  const leave = () => {
    draft.clear();
    onClose();
  };
  const wish = () => ({
    ...(fields.replica === NEW ? { label: fields.label } : { specimen: fields.replica }),
    firing: fields.firing === NO_FIRE ? null : fields.firing,
    ...{ place: fields.place, position: null, settings: {} },
    ...(drawn ? { rows: 0, columns: 0 } : { rows: fields.rows, columns: fields.columns }),
  });
  return (
    <FormDialog
      onSubmit={() => save.mutate(wish(), { onSuccess: leave })}
      onCancel={leave}
      save={drawn ? 'Make it' : 'Lay out the zones'}
      busy={save.isPending}
      error={save.error}
      restored={draft.restored}
    >
      {replicas.length > 0 && (
        <Select
          label="On"
          choices={[
            { id: NEW, label: 'A new tile' },
            ...replicas.map((row) => ({ id: row.id, label: row.label })),
          ]}
          value={fields.replica}
          onChange={(replica) => set({ replica })}
        />
      )}
      {fields.replica === NEW && (
        <Field label="Label" value={fields.label} onChange={(label) => set({ label })} isRequired autoFocus />
      )}
      <OneOf
        label="Zones"
        choices={LAYOUTS}
        value={drawn ? DRAWN : GRID}
        onChange={(layout) => set({ layout })}
      />
      {!drawn && <GridSize fields={fields} set={set} />}
      <FiringPick study={study} value={fields.firing} onChange={(firing) => set({ firing })} />
      <Field label="Place in the fire" value={fields.place} onChange={(place) => set({ place })} />
    </FormDialog>
  );
}

function GridSize({
  fields,
  set,
}: {
  readonly fields: { readonly rows: number; readonly columns: number };
  readonly set: (part: { rows?: number; columns?: number }) => void;
}) {
  return (
    <div className="fields">
      <NumberField
        label="Rows of zones"
        value={fields.rows}
        onChange={(rows) => set({ rows: rows ?? 1 })}
        {...{ min: 1, max: 26, whole: true }}
      />
      <NumberField
        label="Columns of zones"
        value={fields.columns}
        onChange={(columns) => set({ columns: columns ?? 1 })}
        {...{ min: 1, max: 26, whole: true }}
      />
    </div>
  );
}

export function FiringPick(at: {
  readonly study: string;
  readonly value: string;
  readonly onChange: (id: string) => void;
}) {
  const firings = useFirings(at.study).data ?? [];
  const choices = [
    { id: NO_FIRE, label: 'Not fired yet' },
    ...firings.map((one) => ({ id: one.id, label: one.name })),
  ];
  return <Select label="Firing" choices={choices} value={at.value} onChange={at.onChange} />;
}
