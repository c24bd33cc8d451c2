import type { LogPreview } from '../../../../api/contract/firing-log.ts';
import { Button } from '../../../parts/Button.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { showPlain } from '../../../parts/numbers.ts';
import { Select } from '../../../parts/Select.tsx';
import { SettledField } from '../../../parts/SettledField.tsx';
import { choiceOf, SENSORS, sensorOf } from './sensor-choice.ts';

type Understood = LogPreview['channels'][number];
type Channel = Pick<Understood, 'column' | 'name' | 'unit' | 'sensor'>;
interface ChannelsProps {
  readonly preview: LogPreview;
  readonly onChange: (channels: Channel[]) => void;
}

const UNITS = [
  { id: '°C', label: '°C' },
  { id: '°F', label: '°F' },
] as const;
const bare = ({ column, name, unit, sensor }: Channel): Channel => ({ column, name, unit, sensor });

/** Each column of temperatures as it was understood, to be put right: name, unit, thermocouple. */
export function LogColumns({ preview, onChange }: ChannelsProps) {
  const { channels, ignored } = preview;
  const put = (i: number, part: Partial<Channel>) =>
    onChange(channels.map((one, j) => (i === j ? { ...bare(one), ...part } : bare(one))));
  const unknown = channels.every((one) => one.sensor.kind === 'unknown');
  return (
    <fieldset className="choices stack">
      <legend className="label">Channels</legend>
      {unknown && (
        <p>
          Which thermocouple was it? Without that, the error of the temperatures cannot be told. Class 2 is
          the usual wire by IEC 60584-1; its paper or connector says.
        </p>
      )}
      {channels.map((channel, i) => (
        <ChannelFields
          key={channel.column}
          channel={channel}
          peak={preview.peaks[i]?.celsius ?? null}
          onPut={(part) => put(i, part)}
          onLeave={
            channels.length > 1 ? () => onChange(channels.filter((_, j) => i !== j).map(bare)) : undefined
          }
        />
      ))}
      {ignored.length > 0 && (
        <ul>
          {ignored.map(({ column, heading, why }) => (
            <li key={column}>
              Left aside: {heading || `column ${column + 1}`} ({why}).{' '}
              {why === 'not chosen' && (
                <Button
                  look="quiet"
                  onPress={() =>
                    onChange([
                      ...channels.map(bare),
                      {
                        column,
                        name: heading || `column ${column + 1}`,
                        unit: '°C',
                        sensor: { kind: 'unknown' },
                      },
                    ])
                  }
                >
                  Read {heading || `column ${column + 1}`} too
                </Button>
              )}
            </li>
          ))}
        </ul>
      )}
    </fieldset>
  );
}

function ChannelFields(at: {
  readonly channel: Understood;
  readonly peak: number | null;
  readonly onPut: (part: Partial<Channel>) => void;
  readonly onLeave: (() => void) | undefined;
}) {
  const { channel, onPut } = at;
  const { name, sensor } = channel;
  return (
    <fieldset className="stack tight log-channel">
      <legend className="unseen">Channel {name}</legend>
      <div className="fields">
        <SettledField
          label={`Name of ${channel.heading || name}`}
          value={name}
          onChange={(next) => next && onPut({ name: next })}
        />
        <Select
          label={`Unit of ${name}`}
          choices={UNITS}
          value={channel.unit}
          onChange={(unit) => onPut({ unit })}
        />
        <Select
          label={`Thermocouple of ${name}`}
          choices={SENSORS}
          value={choiceOf(sensor)}
          onChange={(choice) => onPut({ sensor: sensorOf(choice) })}
        />
        {sensor.kind === 'stated' && (
          <NumberField
            label={`Stated error of ${name}, ±`}
            unit="°C"
            {...{ min: 0, max: 100 }}
            value={sensor.celsius}
            onChange={(celsius) => onPut({ sensor: { kind: 'stated', celsius: celsius ?? 0 } })}
          />
        )}
      </div>
      <div className="row">
        <span className="hint">
          {channel.sure ? '' : 'Unit not sure: '}
          {channel.why}
          {at.peak !== null && `; hottest ${showPlain(Math.round(at.peak), 6)} °C as read now`}
        </span>
        {at.onLeave && (
          <Button look="quiet" onPress={at.onLeave}>
            Leave {name} out
          </Button>
        )}
      </div>
    </fieldset>
  );
}
