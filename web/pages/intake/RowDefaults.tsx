import type { Choices } from '../../../api/contract/intake.ts';
import { ComboField } from '../../parts/ComboField.tsx';
import { Select } from '../../parts/Select.tsx';
import { SettledField } from '../../parts/SettledField.tsx';
import type { AskedChoices } from '../../queries/asked-choices.ts';
import { useGroups } from '../../queries/groups.ts';
import { useLookups } from '../../queries/lookups.ts';
import { MEASURED_CHOICES } from '../sherds/words.ts';
import type { Role } from './words.ts';

type Defaults = Choices['defaults'];

const UNKNOWN = { id: 'unknown', label: 'Unknown' };
const KINDS = [
  { id: 'sherd', label: 'Sherds', hint: 'Ancient; they make the references' },
  { id: 'replica', label: 'Replicas', hint: 'Fired tiles or pots of ours, set against the sherds' },
  { id: 'material', label: 'Materials', hint: 'What batches are weighed from' },
] as const;

/** What the file does not say, said once for all its rows. */
export function RowDefaults(at: {
  readonly study: string;
  readonly choices: Choices;
  readonly onChange: (part: AskedChoices) => void;
}) {
  const { defaults, columns } = at.choices;
  const groups = useGroups(at.study).data ?? [];
  const techniques = useLookups().data?.techniques ?? [];
  const set = (part: Partial<Defaults>) => at.onChange({ defaults: part });
  const fromFile = (role: Role) => columns.some((column) => column.role === role);
  const hint = (role: Role) => (fromFile(role) ? 'Where the file’s own column is empty' : 'For every row');
  return (
    <section className="stack" aria-labelledby="where">
      <h2 id="where">What they are, and where they go</h2>
      <div className="sheet fields">
        {(!fromFile('specimen') || defaults.specimen) && (
          <SettledField
            label="Specimen"
            hint={hint('specimen')}
            value={defaults.specimen}
            onChange={(specimen) => set({ specimen })}
          />
        )}
        <Select
          label="The rows are"
          hint={hint('kind')}
          choices={KINDS}
          value={defaults.kind ?? 'sherd'}
          onChange={(kind) => set({ kind })}
        />
        <ComboField
          label="Ware group"
          hint={hint('group')}
          placeholder="None"
          choices={groups.map(({ id, name }) => ({ id, label: name }))}
          value={defaults.group ?? ''}
          onChange={(name) => set({ group: name || null })}
        />
        <Select
          label="Measured"
          hint={hint('measured')}
          wrong={!fromFile('measured') && !defaults.measured ? 'The file does not say; choose one.' : null}
          choices={MEASURED_CHOICES}
          value={defaults.measured}
          onChange={(measured) => set({ measured })}
        />
        <Select
          label="Technique"
          hint={hint('technique')}
          choices={[UNKNOWN, ...techniques.map(({ code, name }) => ({ id: code, label: name }))]}
          value={defaults.technique ?? UNKNOWN.id}
          onChange={(code) => set({ technique: code === UNKNOWN.id ? null : code })}
        />
        <SettledField
          label="Laboratory"
          value={defaults.laboratory}
          onChange={(laboratory) => set({ laboratory })}
        />
        <SettledField label="Date" type="date" value={defaults.date} onChange={(date) => set({ date })} />
        <SettledField label="Source" value={defaults.source} onChange={(source) => set({ source })} />
        <SettledField label="DOI" value={defaults.doi} placeholder="10.…" onChange={(doi) => set({ doi })} />
      </div>
    </section>
  );
}
