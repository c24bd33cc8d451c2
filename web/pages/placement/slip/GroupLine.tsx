import type { Comparison } from '../../../../api/contract/placement.ts';
import { SUGGESTED_TRACERS } from '../../../../api/domain/slip/tracers.ts';
import { showAnalyte } from '../../../parts/numbers.ts';
import { Select } from '../../../parts/Select.tsx';
import { TickList } from '../panel/TickList.tsx';

/** A ware group, and oxides of which its paint holds none without its slip. */
export interface LineChoice {
  readonly group: string | null;
  readonly known: Readonly<Record<string, number>>;
}
export const NO_LINE: LineChoice = {
  group: null,
  known: Object.fromEntries(SUGGESTED_TRACERS.map((oxide) => [oxide, 0])),
};

export function GroupLine(at: {
  readonly groups: Comparison['groups'];
  readonly oxides: readonly string[];
  readonly value: LineChoice;
  readonly onChange: (value: LineChoice) => void;
}) {
  const { value, onChange } = at;
  const there = at.groups.some(({ id }) => id === value.group);
  return (
    <div className="stack">
      <div className="slip-choice">
        <Select
          label="Line of"
          choices={at.groups.map(({ id, name }) => ({ id, label: name }))}
          value={there ? value.group : null}
          onChange={(group) => onChange({ ...value, group })}
        />
      </div>
      <TickList
        label="The group’s paint holds none of these without its slip"
        items={at.oxides.map((oxide) => ({ id: oxide, name: oxide, label: showAnalyte(oxide) }))}
        chosen={Object.keys(value.known).filter((oxide) => at.oxides.includes(oxide))}
        onChange={(chosen) =>
          onChange({ ...value, known: Object.fromEntries((chosen ?? at.oxides).map((oxide) => [oxide, 0])) })
        }
        all="All of them"
      />
    </div>
  );
}
