import type { WareGroup } from '../../../../api/contract/ware-group.ts';
import { ComboField } from '../../../parts/ComboField.tsx';
import { Field } from '../../../parts/Field.tsx';
import { Select } from '../../../parts/Select.tsx';
import { OneOf, Tick } from '../../../parts/Tick.tsx';
import { useSpecimens } from '../../../queries/specimens.ts';
import type { TargetForm } from './target-form.ts';

const SOURCES = [
  { id: 'group', label: 'A ware group’s centre' },
  { id: 'sherd', label: 'One sherd' },
  { id: 'typed', label: 'Figures of your own' },
] as const;

interface TargetFieldsProps {
  readonly study: string;
  readonly groups: readonly WareGroup[];
  readonly form: TargetForm;
  readonly set: (part: Partial<TargetForm>) => void;
}

/** What is aimed at, and whose slip is drawn off it. */
export function TargetFields({ study, groups, form, set }: TargetFieldsProps) {
  const choices = groups.map(({ id, name }) => ({ id, label: name }));
  return (
    <section className="stack" aria-labelledby="aim">
      <h2 id="aim">Aim</h2>
      <OneOf label="Aim at" choices={SOURCES} value={form.source} onChange={(source) => set({ source })} />
      {form.source === 'group' && (
        <Select
          label="Ware group"
          choices={choices}
          value={form.group}
          onChange={(group) => set({ group })}
        />
      )}
      {form.source === 'sherd' && <SherdPick study={study} form={form} set={set} />}
      {form.source === 'typed' && (
        <Field
          label="Fired paint, wt%"
          hint="One oxide a line, with ± one standard deviation if it is known"
          placeholder={'PbO 52 1\nSiO2 33 0.5\nMnO 9'}
          lines={6}
          value={form.typed}
          onChange={(typed) => set({ typed })}
        />
      )}
      <Tick isSelected={form.slip} onChange={(slip) => set({ slip })}>
        Draw the slip off: the clay beneath brings it by itself
      </Tick>
      {form.slip && (
        <div className="fields">
          <Field
            label="Slip’s share of the reading (%)"
            inputMode="decimal"
            value={form.share}
            onChange={(share) => set({ share })}
          />
          <Select
            label="Slip of"
            choices={choices}
            value={form.slipGroup ?? form.group}
            onChange={(slipGroup) => set({ slipGroup })}
          />
        </div>
      )}
    </section>
  );
}

function SherdPick({ study, form, set }: Omit<TargetFieldsProps, 'groups'>) {
  const rows = useSpecimens(study, { limit: 5000 }).data?.rows ?? [];
  const painted = rows.filter((row) => row.measured.includes('paint'));
  return (
    <ComboField
      label="Sherd"
      hint="Only those whose paint has been analysed"
      choices={painted.map(({ id, label }) => ({ id, label }))}
      value={painted.find((row) => row.id === form.sherd)?.label ?? ''}
      onChange={(label) => set({ sherd: painted.find((row) => row.label === label.trim())?.id ?? null })}
    />
  );
}
