import type { ChannelSummaryAnswer, FiringSummaryAnswer } from '../../../../api/contract/firing-summary.ts';
import { hoursMinutes } from '../../../../api/domain/firing/stages.ts';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { celsius, celsiusError, hours, perHour } from './words.ts';

/** One row of a table with a column for each channel. */
interface Row {
  readonly id: string;
  readonly label: string;
  readonly cells: readonly string[];
}
const NONE = 'not reached';

/** What the log says, channel by channel: peak, time above temperatures, heating and cooling, stages of air. */
export function LogTables({ summary }: { readonly summary: FiringSummaryAnswer }) {
  const { channels, unevenness } = summary;
  const tables = [
    { label: 'Time above temperatures', first: 'Above', rows: timeAbove(channels) },
    { label: 'Heating and cooling, °C per hour', first: 'Rate', rows: rates(channels) },
    { label: 'Stages of air', first: 'Stage', rows: stages(channels) },
  ];
  return (
    <div className="stack">
      <DataTable label="Peaks" columns={PEAKS} rows={channels} rowKey={(channel) => channel.name} snug />
      {unevenness && (
        <p>
          Unevenness: the peaks lie {celsius(unevenness)} apart. Channels count as uneven only beyond the
          errors of both sensors.
        </p>
      )}
      {tables
        .filter(({ rows }) => rows.length > 0)
        .map(({ label, first, rows }) => (
          <div key={label} className="stack tight">
            <h3>{label}</h3>
            <DataTable
              label={label}
              cards={false}
              columns={columnsFor(first, channels)}
              rows={rows}
              rowKey={(row) => row.id}
              snug
            />
          </div>
        ))}
    </div>
  );
}

const PEAKS: readonly Column<ChannelSummaryAnswer>[] = [
  { id: 'channel', label: 'Channel', header: true, cell: (c) => c.name },
  { id: 'peak', label: 'Peak', cell: (c) => (c.peak ? celsiusError(c.peak) : 'no reading') },
  { id: 'at', label: 'At', cell: (c) => (c.peak ? `${hoursMinutes(c.peak.seconds)} h` : '') },
  { id: 'error', label: 'Error of the sensor', prose: true, cell: (c) => c.tolerance },
];

function columnsFor(first: string, channels: readonly ChannelSummaryAnswer[]): Column<Row>[] {
  return [
    { id: 'row', label: first, header: true, cell: (row) => row.label },
    ...channels.map((channel, i) => ({
      id: channel.name,
      label: channel.name,
      cell: (row: Row) => row.cells[i] ?? '',
    })),
  ];
}

function timeAbove(channels: readonly ChannelSummaryAnswer[]): Row[] {
  return (channels[0]?.timeAbove ?? []).map(({ threshold }, i) => ({
    id: String(threshold),
    label: `${threshold} °C`,
    cells: channels.map((c) => {
      const time = c.timeAbove[i]!.seconds;
      return time.high === 0 ? NONE : hours(time);
    }),
  }));
}

function rates(channels: readonly ChannelSummaryAnswer[]): Row[] {
  const row = (
    id: string,
    label: string,
    of: (c: ChannelSummaryAnswer) => { perHour: Bounds } | null,
  ): Row => ({
    ...{ id, label },
    cells: channels.map((c) => {
      const rate = of(c);
      return rate ? perHour(rate.perHour) : NONE;
    }),
  });
  const bands = (channels[0]?.bands ?? []).map(({ from, to, direction }, i) =>
    row(
      `${direction} ${from}`,
      `${direction === 'heating' ? 'Heating' : 'Cooling'}, ${from} to ${to} °C`,
      (c) => c.bands[i]!.rate,
    ),
  );
  return [
    row('heating', 'Fastest heating over 10 minutes', (c) => c.fastestHeating),
    row('cooling', 'Fastest cooling over 10 minutes', (c) => c.fastestCooling),
    ...bands.filter((one) => one.cells.some((cell) => cell !== NONE)),
  ];
}
type Bounds = ChannelSummaryAnswer['timeAbove'][number]['seconds'];

function stages(channels: readonly ChannelSummaryAnswer[]): Row[] {
  return (channels[0]?.stages ?? []).map(({ stage }, i) => ({
    id: `${stage.air} ${stage.from}`,
    label: `${stage.air}, ${hoursMinutes(stage.from)} to ${hoursMinutes(stage.to)} h`,
    cells: channels.map((c) => {
      const { highest, rate } = c.stages[i]!;
      if (!highest) return 'outside the log';
      return `up to ${celsiusError(highest)}${rate ? `; on average ${perHour(rate.perHour)} °C per hour` : ''}`;
    }),
  }));
}
