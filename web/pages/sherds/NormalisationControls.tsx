import type { NormalisationSettings } from '../../../api/domain/composition/types.ts';
import { showAnalyte } from '../../parts/numbers.ts';
import { Select } from '../../parts/Select.tsx';
import { Tick } from '../../parts/Tick.tsx';

const FORMS = {
  iron: ['Fe2O3', 'FeO'],
  manganese: ['MnO', 'MnO2', 'Mn2O3', 'Mn3O4'],
  copper: ['CuO', 'Cu2O'],
  lead: ['PbO', 'PbO2', 'Pb3O4'],
  sulfur: ['SO3', 'S'],
} as const satisfies Partial<Record<keyof NormalisationSettings, readonly string[]>>;
type Element = keyof typeof FORMS;
const ELEMENTS = Object.keys(FORMS) as Element[];

/** Which form each element is written in, and whether volatiles are taken out. */
export function NormalisationControls(at: {
  readonly settings: NormalisationSettings;
  readonly onChange: (settings: NormalisationSettings) => void;
}) {
  return (
    <fieldset className="sheet stack">
      <legend className="unseen">How it is normalised</legend>
      <div className="fields narrow">
        {ELEMENTS.map((element) => (
          <Select
            key={element}
            label={`${element[0]?.toUpperCase()}${element.slice(1)} as`}
            choices={FORMS[element].map((form) => ({ id: form, label: showAnalyte(form) }))}
            value={at.settings[element]}
            onChange={(form) => at.onChange({ ...at.settings, [element]: form })}
          />
        ))}
      </div>
      <Tick
        isSelected={at.settings.volatileFree}
        onChange={(volatileFree) => at.onChange({ ...at.settings, volatileFree })}
      >
        Free of volatiles: loss on ignition, H₂O and CO₂ are taken out before closure
      </Tick>
    </fieldset>
  );
}
