import { openInWords } from '../domain/firing/stages.ts';
import { listInWords } from '../domain/placement/words.ts';
import { type DrawnFiring, firingCurveData } from './firing-curve-data.ts';
import { numeral } from './text.ts';

/** What of a firing its caption tells beside what is drawn. */
export interface CaptionedFiring extends DrawnFiring {
  readonly date: string | null;
  readonly log: (NonNullable<DrawnFiring['log']> & { readonly rows: number }) | null;
  readonly summary: {
    readonly channels: readonly (NonNullable<DrawnFiring['summary']>['channels'][number] & {
      readonly tolerance: string;
    })[];
  } | null;
}

const many = (n: number, one: string) => `${n.toLocaleString('en-GB')} ${n === 1 ? one : `${one}s`}`;

/** The caption of a firing's curve: when, n of readings, sensors and their errors, what was thinned and left out. */
export function firingCaption(firing: CaptionedFiring): string {
  const { log, summary } = firing;
  const drawn = firingCurveData(firing);
  const untimed = firing.readings.length - drawn.readings.length;
  const byHand = drawn.readings.length > 0 ? [`${many(drawn.readings.length, 'reading')} by hand`] : [];
  const logged = log
    ? [`a log of ${many(log.rows, 'reading')} in ${many(log.curves.length, 'channel')}`]
    : [];
  return [
    `Temperature of ${firing.name}${firing.date ? `, ${firing.date}` : ''}, from ${listInWords([...logged, ...byHand])}.`,
    ...(summary?.channels ?? []).map(channelInWords),
    ...(log ? logInWords(firing) : []),
    ...(byHand.length > 0
      ? ['Dots with bars: readings by hand with what the error of the instrument leaves open.']
      : []),
    ...(untimed > 0
      ? [`${many(untimed, 'reading')} by hand without a time or a known error not shown.`]
      : []),
    ...(drawn.stages.length > 0 ? ['Above: the air, as noted at the fire.'] : []),
    ...(firing.open ? [`Not drawn: ${openInWords(firing.open)}.`] : []),
  ].join(' ');
}

/** The caption of firings over one another: of which, and what of each is drawn. */
export function comparedCaption(
  curves: readonly { readonly name: string; readonly points: readonly unknown[] }[],
): string {
  const names = listInWords(curves.map(({ name }) => name));
  const most = Math.max(...curves.map(({ points }) => points.length));
  return `Temperature of ${names} over one another, from when each fire was lit: of each the hottest channel of its log, in at most ${many(most, 'point')}; the errors of their sensors are not drawn.`;
}

function channelInWords({
  name,
  peak,
  tolerance,
}: NonNullable<CaptionedFiring['summary']>['channels'][number]): string {
  const top = peak
    ? `peak ${numeral(peak.value, 0)} °C (${numeral(peak.low, 0)} to ${numeral(peak.high, 0)} °C)`
    : 'no reading that can be used';
  return `${name}: ${top}; ${tolerance}.`;
}

function logInWords({ log }: CaptionedFiring): string[] {
  const { rows, curves, gaps } = log!;
  const most = Math.max(0, ...curves.map(({ points }) => points.length));
  const spikes = curves.reduce((sum, one) => sum + one.spikes.length, 0);
  return [
    ...(most < rows
      ? [
          `Lines are thinned to ${many(most, 'point')}; the highest and the lowest reading of every stretch are kept.`,
        ]
      : []),
    ...(spikes > 0 ? [`Crosses: ${many(spikes, 'spike')}, left out of the peak.`] : []),
    ...(gaps.length > 0 ? [`${many(gaps.length, 'gap')} without readings.`] : []),
  ];
}
