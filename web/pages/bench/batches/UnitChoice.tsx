import { Select } from '../../../parts/Select.tsx';

const UNITS = [
  { id: 'g', label: 'Grams', hint: 'As weighed, water included' },
  { id: 'parts', label: 'Parts by mass', hint: 'Scaled to grams on the bench sheet' },
] as const;

export function UnitChoice(at: {
  readonly unit: 'g' | 'parts';
  readonly onChange: (unit: 'g' | 'parts') => void;
}) {
  return <Select label="Amounts in" choices={UNITS} value={at.unit} onChange={at.onChange} />;
}
