import type { Technique } from '../../../api/contract/lookups.ts';
import type { ZoneRecord } from '../../../api/contract/tile.ts';
import { Field } from '../../parts/Field.tsx';
import { Select } from '../../parts/Select.tsx';
import type { AnalysisDetails } from './analysis-details.ts';
import { MEASURED_CHOICES } from './words.ts';

const UNKNOWN = 'unknown';
const NO_ZONE = 'none';

/** What was measured, how, by whom, and where it was published. */
export function AnalysisFields(at: {
  readonly details: AnalysisDetails;
  readonly techniques: readonly Technique[];
  /** Zones of the tile that was measured; none where it is no tile. */
  readonly zones: readonly Pick<ZoneRecord, 'id' | 'label'>[];
  readonly onChange: (details: AnalysisDetails) => void;
}) {
  const { details } = at;
  const set = (part: Partial<AnalysisDetails>) => at.onChange({ ...details, ...part });
  const bind = (key: 'laboratory' | 'instrument' | 'source' | 'doi' | 'spot' | 'note') => ({
    value: details[key],
    onChange: (text: string) => set({ [key]: text }),
  });
  const techniques = [
    { id: UNKNOWN, label: 'Unknown' },
    ...at.techniques.map(({ code, name, note }) => ({ id: code, label: name, hint: note || undefined })),
  ];
  return (
    <div className="fields sheet">
      <Select
        label="Measured"
        choices={MEASURED_CHOICES}
        value={details.measured}
        onChange={(measured) => set({ measured })}
      />
      <Select
        label="Technique"
        choices={techniques}
        value={details.technique ?? UNKNOWN}
        onChange={(code) => set({ technique: code === UNKNOWN ? null : code })}
      />
      {at.zones.length > 0 && (
        <Select
          label="Zone of the tile"
          choices={[
            { id: NO_ZONE, label: 'None noted' },
            ...at.zones.map(({ id, label }) => ({ id, label })),
          ]}
          value={details.zone ?? NO_ZONE}
          onChange={(zone) => set({ zone: zone === NO_ZONE ? null : zone })}
        />
      )}
      <Field label="Spot" {...bind('spot')} hint="Where on the specimen, or which shot" />
      <Field label="Laboratory" {...bind('laboratory')} />
      <Field
        label="Date"
        type="date"
        value={details.date ?? ''}
        onChange={(date) => set({ date: date || null })}
      />
      <Field label="Instrument" {...bind('instrument')} />
      <Field label="Source" {...bind('source')} />
      <Field label="DOI" {...bind('doi')} placeholder="10.…" />
      <Field label="Note" {...bind('note')} lines={2} whole />
    </div>
  );
}
