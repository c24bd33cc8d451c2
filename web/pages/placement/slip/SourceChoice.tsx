import type { SlipShelf, SlipSource } from '../../../../api/domain/slip/slip-source.ts';
import { ComboField } from '../../../parts/ComboField.tsx';
import { type Choice, Select } from '../../../parts/Select.tsx';

type Kind = SlipSource['kind'] | 'in';

export interface SourceChoiceProps {
  readonly shelf: SlipShelf;
  readonly specimen: string;
  /** Null where the slip is left in. */
  readonly source: SlipSource | null;
  /** Null puts the slip back in. */
  readonly onChoose: (source: SlipSource | null) => void;
}

/** Which analysis stands for the slip beneath a paint. */
export function SourceChoice({ shelf, specimen, source, onChoose }: SourceChoiceProps) {
  const { slips } = shelf;
  const groups = groupsOf(shelf);
  const kind: Kind = source?.kind ?? 'in';
  const kinds = kindsFor(shelf, { specimen, kind, groups: groups.length });
  const take = (next: Kind) => {
    if (next === 'in') onChoose(null);
    else if (next === 'own') onChoose({ kind: 'own' });
    else if (next === 'group') onChoose({ kind: 'group', group: groups[0]!.id });
    else onChoose({ kind: 'specimen', specimen: slips[0]!.id });
  };
  return (
    <>
      <Select label="Slip" choices={kinds} value={kind} onChange={take} />
      {source?.kind === 'group' && (
        <Select
          label="Ware group"
          choices={groups}
          value={source.group}
          onChange={(group) => onChoose({ kind: 'group', group })}
        />
      )}
      {source?.kind === 'specimen' && (
        <ComboField
          label="Slip of"
          choices={slips.map(({ id, label }) => ({ id, label }))}
          value={slips.find(({ id }) => id === source.specimen)?.label ?? ''}
          onChange={(label) => {
            const found = slips.find((slip) => slip.label === label);
            if (found) onChoose({ kind: 'specimen', specimen: found.id });
          }}
        />
      )}
    </>
  );
}

function kindsFor(
  { slips }: SlipShelf,
  at: { readonly specimen: string; readonly kind: Kind; readonly groups: number },
): Choice<Kind>[] {
  const own = slips.some(({ id }) => id === at.specimen);
  const choices: (Choice<Kind> & { readonly there: boolean })[] = [
    { id: 'in', label: 'Left in', hint: 'The paint as it was read', there: true },
    { id: 'own', label: 'Its own slip', hint: 'Analysed on the same specimen', there: own },
    { id: 'group', label: 'A ware group’s mean slip', there: at.groups > 0 },
    { id: 'specimen', label: 'Another specimen’s slip', there: slips.length > 0 },
  ];
  return choices.filter(({ id, there }) => there || id === at.kind).map(({ there: _, ...choice }) => choice);
}

function groupsOf({ slips, names }: SlipShelf): Choice[] {
  return Object.entries(names).flatMap(([id, label]) => {
    const n = slips.filter(({ group }) => group === id).length;
    return n > 0 ? [{ id, label, hint: `${n} slip ${n === 1 ? 'analysis' : 'analyses'}` }] : [];
  });
}
