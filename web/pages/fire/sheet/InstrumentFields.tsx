import { NumberField } from '../../../parts/NumberField.tsx';
import { Select } from '../../../parts/Select.tsx';
import { type Instrument, KINDS } from './instrument.ts';

interface InstrumentProps {
  readonly instrument: Instrument;
  readonly onChange: (next: Instrument) => void;
}

/** What the temperature is read by; kept on this phone. */
export function InstrumentFields({ instrument, onChange }: InstrumentProps) {
  return (
    <>
      <Select
        label="Read by"
        choices={KINDS}
        value={instrument.kind}
        onChange={(kind) => onChange({ ...instrument, kind })}
      />
      {instrument.kind === 'stated' && (
        <Figure {...{ instrument, onChange }} name="stated" label="Error, ±" unit="°C" limits={[0, 100]} />
      )}
      {instrument.kind === 'infrared' && <Infrared instrument={instrument} onChange={onChange} />}
    </>
  );
}

function Infrared({ instrument, onChange }: InstrumentProps) {
  const { surface } = instrument;
  const given = { instrument, onChange };
  const bound = (name: 'value' | 'low' | 'high', label: string) => (
    <NumberField
      label={label}
      {...{ min: 0.05, max: 1 }}
      value={surface[name]}
      onChange={(value) =>
        value !== null && onChange({ ...instrument, surface: { ...surface, [name]: value } })
      }
    />
  );
  return (
    <details className="infrared">
      <summary>
        Its settings: {instrument.micrometres} µm, set to {instrument.set}, surface {surface.low} to{' '}
        {surface.high}
      </summary>
      <div className="stack">
        <p className="faint">
          From the maker’s sheet. How well the surface radiates (its emissivity) is given with bounds: no
          value for painted pottery at heat is published that we know of, so start wide. Flames and hot walls
          reflected in the surface make it read higher; that is not in the bounds.
        </p>
        <Figure {...given} name="micrometres" label="Wavelength it works at" unit="µm" limits={[0.5, 20]} />
        <Figure {...given} name="set" label="Emissivity it is set to" limits={[0.05, 1]} />
        {bound('value', 'Emissivity of the surface, best guess')}
        {bound('low', 'At least')}
        {bound('high', 'At most')}
        <Figure {...given} name="accuracyCelsius" label="Accuracy, ±" unit="°C" limits={[0, 200]} />
        <Figure
          {...given}
          name="accuracyPercent"
          label="or, if more, ±"
          unit="% of reading"
          limits={[0, 50]}
        />
      </div>
    </details>
  );
}

function Figure(
  at: InstrumentProps & {
    readonly name: 'stated' | 'micrometres' | 'set' | 'accuracyCelsius' | 'accuracyPercent';
    readonly label: string;
    readonly unit?: string;
    readonly limits: readonly [least: number, most: number];
  },
) {
  return (
    <NumberField
      label={at.label}
      {...(at.unit ? { unit: at.unit } : {})}
      {...{ min: at.limits[0], max: at.limits[1] }}
      value={at.instrument[at.name]}
      onChange={(value) => value !== null && at.onChange({ ...at.instrument, [at.name]: value })}
    />
  );
}
