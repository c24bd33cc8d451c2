import { Field } from '../../../parts/Field.tsx';
import { Select } from '../../../parts/Select.tsx';
import type { FireForm } from './fire-form.ts';

const ATMOSPHERES = [
  { id: 'air', label: 'Air', hint: 'Open fire or kiln with enough air' },
  { id: 'smoke', label: 'Smoke', hint: 'Reducing: iron, manganese and copper in their lower forms' },
] as const;

/** How the batch is to be fired, as far as its chemistry asks. */
export function FireFields(at: { readonly fire: FireForm; readonly onChange: (fire: FireForm) => void }) {
  const { fire } = at;
  const set = (part: Partial<FireForm>) => at.onChange({ ...fire, ...part });
  return (
    <div className="fields">
      <Field
        label="Peak of the firing (°C)"
        inputMode="decimal"
        value={fire.celsius}
        onChange={(celsius) => set({ celsius })}
      />
      <Select
        label="Kiln air"
        choices={ATMOSPHERES}
        value={fire.atmosphere}
        onChange={(atmosphere) => set({ atmosphere })}
      />
      <Field
        label="Sulfur kept, least (mol per mol Pb)"
        inputMode="decimal"
        placeholder="as the temperature tells"
        value={fire.low}
        onChange={(low) => set({ low })}
      />
      <Field
        label="Sulfur kept, most (mol per mol Pb)"
        inputMode="decimal"
        placeholder="as the temperature tells"
        value={fire.high}
        onChange={(high) => set({ high })}
      />
    </div>
  );
}
