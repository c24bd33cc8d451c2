import type { Preview } from '../../../api/contract/intake.ts';
import { UNCERTAINTY_BASES, UNITS } from '../../../api/domain/composition/types.ts';
import { showAnalyte } from '../../parts/numbers.ts';
import { Select } from '../../parts/Select.tsx';
import { Tick } from '../../parts/Tick.tsx';
import type { ColumnChoice } from '../../queries/asked-choices.ts';
import { belongsToColumn, hasUnit } from './words.ts';

type Understood = Preview['understanding']['columns'][number];

interface ColumnDetailsProps {
  readonly column: Understood;
  readonly choice: ColumnChoice;
  readonly others: readonly Understood[];
  readonly analytes: readonly string[];
  readonly onChange: (choice: ColumnChoice) => void;
}

const UNSET = 'unset';

/** What else a column's role asks for: which analyte, which unit, which column a ± belongs to. */
export function ColumnDetails({ column, choice, others, analytes, onChange }: ColumnDetailsProps) {
  const set = (part: Partial<ColumnChoice>) => onChange({ ...choice, ...part });
  const of = `of column ${column.letter}`;
  const targets = others.filter((other) => other.index !== column.index && other.role === 'analyte');
  return (
    <>
      {choice.role === 'analyte' && (
        <Select
          label={`Analyte ${of}`}
          hideLabel
          placeholder="Which analyte?"
          choices={analytes.map((symbol) => ({ id: symbol, label: showAnalyte(symbol) }))}
          value={choice.analyte}
          onChange={(analyte) => set({ analyte })}
        />
      )}
      {hasUnit(choice.role) && (
        <Select
          label={`Unit ${of}`}
          hideLabel
          choices={[
            ...(choice.role === 'value' ? [{ id: UNSET, label: 'as each row says' }] : []),
            ...UNITS.map((unit) => ({ id: unit, label: unit })),
          ]}
          value={choice.unit ?? UNSET}
          onChange={(unit) => set({ unit: UNITS.find((one) => one === unit) ?? null })}
        />
      )}
      {belongsToColumn(choice.role) && targets.length > 0 && (
        <Select
          label={`Column that ${column.letter} belongs to`}
          hideLabel
          placeholder="Of which column?"
          choices={targets.map((target) => ({
            id: String(target.index),
            label: `${target.letter} ${target.header}`,
          }))}
          value={choice.of === null ? null : String(choice.of)}
          onChange={(index) => set({ of: Number(index) })}
        />
      )}
      {choice.role === 'uncertainty' && (
        <>
          <Select
            label={`What ± means in column ${column.letter}`}
            hideLabel
            choices={UNCERTAINTY_BASES.map((basis) => ({ id: basis, label: basis }))}
            value={choice.basis ?? 'unstated'}
            onChange={(basis) => set({ basis })}
          />
          <Tick isSelected={choice.relative} onChange={(relative) => set({ relative })}>
            in per cent of the value
          </Tick>
        </>
      )}
    </>
  );
}
