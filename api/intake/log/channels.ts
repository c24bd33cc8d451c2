import { RequirementError } from '../../domain/requirement.ts';
import { letterOf } from '../letters.ts';
import { unitIn } from './temperature.ts';
import { isRecordNumber, type SampleColumn } from './time-column.ts';
import type { LogChoices, LogUnderstanding, UnderstoodChannel } from './types.ts';

const NO_SENSOR =
  /set ?point|target|soll|program|output|power|duty|batter|humid|\brh\b|%|volt|\bmv\b|ampere|pressure|\bco2?\b|\bo2\b|oxygen|ambient light/i;
const MOST_CHANNELS = 16;

type Columns = Pick<LogUnderstanding, 'channels' | 'ignored'> & { readonly doubts: string[] };

/** The columns of temperatures; the others with the reason why not. Throws when there is none, or more than sixteen. */
export function channelsOf(
  columns: readonly SampleColumn[],
  time: readonly number[],
  choices: LogChoices,
): Columns {
  const sensor = choices.sensor ?? { kind: 'unknown' as const };
  const judged = columns.filter((c) => !time.includes(c.index)).map((c) => ({ c, why: whyNot(c) }));
  const kept = judged.filter(({ why }) => why === null).map(({ c }) => c);
  const channels = choices.channels
    ? choices.channels.map((choice): UnderstoodChannel => {
        const heading = columns.find((c) => c.index === choice.column)?.heading ?? '';
        return { ...choice, heading, why: 'as chosen', sure: true };
      })
    : kept.map((c) => understood(c, sensor));
  const named = uniqueNames(channels);
  if (named.length === 0)
    throw new RequirementError(
      `a log needs a column of temperatures beside its times; found ${columns.map((c) => c.heading || `column ${letterOf(c.index)}`).join(', ')}`,
    );
  if (named.length > MOST_CHANNELS)
    throw new RequirementError(`a log may have ${MOST_CHANNELS} channels; found ${named.length}`);
  return {
    channels: named,
    ignored: judged
      .filter(({ c }) => !named.some((n) => n.column === c.index))
      .map(({ c, why }) => ({ column: c.index, heading: c.heading, why: why ?? 'not chosen' })),
    doubts: named.filter((n) => !n.sure).map((n) => `No unit stands beside ${n.name}; it was taken as °C.`),
  };
}

function whyNot(column: SampleColumn): string | null {
  const { cells, numbers, heading } = column;
  if (cells.length === 0) return 'empty in the first rows';
  if (isRecordNumber(column)) return 'counts the rows';
  if (numbers.length < 0.5 * cells.length) return 'not figures';
  return NO_SENSOR.test(heading) ? `“${heading}” is not a measured temperature` : null;
}

function understood(
  { index, heading, cells }: SampleColumn,
  sensor: UnderstoodChannel['sensor'],
): UnderstoodChannel {
  const unit = unitIn(heading) ?? unitIn(cells[0]!.replace(/^[\d.,\s+-]+/, ' '));
  return {
    column: index,
    name:
      heading
        .replace(/\s*[[(]?\s*(?:°|º|deg\.?)\s*[CF]\s*[\])]?\s*$/i, '')
        .replace(/\s*[[(]\s*[CF]\s*[\])]\s*$/i, '')
        .trim() || `column ${letterOf(index)}`,
    unit: unit ?? '°C',
    sensor,
    heading,
    why: unit
      ? `${unit} stands ${unitIn(heading) ? 'in the heading' : 'beside the figures'}`
      : 'figures without a unit',
    sure: unit !== null,
  };
}

/** The same name twice gets a number. */
function uniqueNames(channels: readonly UnderstoodChannel[]): UnderstoodChannel[] {
  return channels.map((c, i) => {
    const before = channels.slice(0, i).filter((o) => o.name === c.name).length;
    return before === 0 ? c : { ...c, name: `${c.name} (${before + 1})` };
  });
}
