import type { LogPreview } from '../../../../api/contract/firing-log.ts';
import { Select } from '../../../parts/Select.tsx';

type Time = Pick<LogPreview['time'], 'kind' | 'columns' | 'dateOrder'>;

const KINDS: readonly { readonly id: Time['kind']; readonly label: string }[] = [
  { id: 'seconds', label: 'Seconds since the start' },
  { id: 'minutes', label: 'Minutes since the start' },
  { id: 'hours', label: 'Hours since the start' },
  { id: 'milliseconds', label: 'Milliseconds since the start' },
  { id: 'elapsed', label: 'h:mm or h:mm:ss since the start' },
  { id: 'minutes-seconds', label: 'm:ss since the start' },
  { id: 'clock', label: 'Date and time' },
  { id: 'time-of-day', label: 'Time of day without a date' },
  { id: 'epoch-seconds', label: 'Seconds since 1970' },
  { id: 'epoch-milliseconds', label: 'Milliseconds since 1970' },
  { id: 'spreadsheet-days', label: 'Days as a spreadsheet counts' },
];
const ORDERS = [
  { id: 'dayFirst', label: 'Day first: 3/4 is 3 April' },
  { id: 'monthFirst', label: 'Month first: 3/4 is 4 March' },
] as const;

/** How times are written, to be put right. */
export function LogTime(at: { readonly preview: LogPreview; readonly onChange: (time: Time) => void }) {
  const { kind, columns, dateOrder, why } = at.preview.time;
  const time = { kind, columns, dateOrder };
  const headings = columns.map((i) => at.preview.headings[i] || `column ${i + 1}`).join(' and ');
  return (
    <div className="fields">
      <Select
        label={`Times in ${headings}`}
        choices={KINDS}
        value={kind}
        hint={why}
        onChange={(next) => at.onChange({ ...time, kind: next })}
      />
      {kind === 'clock' && (
        <Select
          label="Order of dates"
          choices={ORDERS}
          value={dateOrder}
          onChange={(next) => at.onChange({ ...time, dateOrder: next })}
        />
      )}
    </div>
  );
}
