import type { NormalisationSettings } from '../../../../api/domain/composition/types.ts';
import { showAnalyte } from '../../../parts/numbers.ts';
import { Select } from '../../../parts/Select.tsx';
import { Tick } from '../../../parts/Tick.tsx';
import type { PartProps } from './ReckoningChoice.tsx';

const FORMS = [
  { key: 'iron', label: 'Iron as', forms: ['Fe2O3', 'FeO'] },
  { key: 'manganese', label: 'Manganese as', forms: ['MnO', 'MnO2', 'Mn2O3', 'Mn3O4'] },
  { key: 'copper', label: 'Copper as', forms: ['CuO', 'Cu2O'] },
  { key: 'lead', label: 'Lead as', forms: ['PbO', 'PbO2', 'Pb3O4'] },
  { key: 'sulfur', label: 'Sulfur as', forms: ['SO3', 'S'] },
] as const satisfies readonly {
  key: Exclude<keyof NormalisationSettings, 'volatileFree'>;
  label: string;
  forms: readonly string[];
}[];

/** In which forms the elements are written, and whether volatiles are in. */
export function WritingChoice({ settings, onChange }: PartProps) {
  const { normalisation } = settings;
  const change = (part: Partial<NormalisationSettings>) =>
    onChange({ normalisation: { ...normalisation, ...part } });
  return (
    <>
      <div className="fields forms">
        {FORMS.map(({ key, label, forms }) => (
          <Select
            key={key}
            label={label}
            choices={forms.map((form) => ({ id: form as string, label: showAnalyte(form) }))}
            value={normalisation[key]}
            onChange={(form) => change({ [key]: form })}
          />
        ))}
      </div>
      <Tick isSelected={normalisation.volatileFree} onChange={(volatileFree) => change({ volatileFree })}>
        Without water and other volatiles
      </Tick>
    </>
  );
}
