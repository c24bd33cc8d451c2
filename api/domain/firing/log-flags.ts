import { hoursMinutes } from './stages.ts';
import type { LogFlag, LogFlagKind } from './types.ts';

interface Seen {
  readonly kind: LogFlagKind;
  readonly channel: string | null;
  readonly row: number;
  readonly seconds: number | null;
  count: number;
  longest: number;
}

/** What each kind of fault is, and what was done about it. `n` is how often, `jump` the longest in words. */
const WORDS: Record<LogFlagKind, (n: number, jump: string) => string> = {
  'duplicate-time': (n) => `${rows(n)} the time of the row before; both readings count.`,
  'clock-back': (n, jump) =>
    `The clock goes back ${times(n)}, by up to ${jump} (summer time, or set by hand); time goes on from where it was.`,
  'clock-forward': (n) =>
    `The clock jumps one hour ahead ${times(n)}: summer time, or an hour without readings. It is taken as an hour without readings.`,
  'out-of-order': (n) =>
    `${n === 1 ? 'One row is' : `${count(n)} rows are`} earlier than the row before and left out.`,
  restart: (n) => `The time starts again ${times(n)}: the second log is set after the first, a gap between.`,
  gap: (n, jump) => `${n === 1 ? 'A gap' : `${count(n)} gaps`} without readings, the longest ${jump}.`,
  spike: (n) =>
    `${n === 1 ? 'One reading jumps' : `${count(n)} readings jump`} away and back, as from a loose contact; left out of the summary and marked on the curve.`,
  missing: (n) => `${n === 1 ? 'One row has' : `${count(n)} rows have`} no reading.`,
  'out-of-range': (n) =>
    `${n === 1 ? 'One reading lies' : `${count(n)} readings lie`} outside −100 to 2,000 °C, as an open circuit gives; left out.`,
  fahrenheit: () => '',
  'celsius-as-fahrenheit': () => '',
  'too-fast': () => '',
  'too-slow': () => '',
};

const count = (n: number) => n.toLocaleString('en-GB');
const rows = (n: number) => (n === 1 ? 'One row repeats' : `${count(n)} rows repeat`);
const times = (n: number) => (n === 1 ? 'once' : `${count(n)} times`);

function jumpInWords(seconds: number): string {
  return seconds < 120 ? `${Math.round(seconds)} s` : `${hoursMinutes(seconds)} h`;
}

/** Counts faults by kind and channel, and remembers where each was first seen. */
export class LogFlags {
  readonly #seen = new Map<string, Seen>();

  add(kind: LogFlagKind, at: { channel?: string; row: number; seconds: number | null; jump?: number }): void {
    const channel = at.channel ?? null;
    const key = `${kind} ${channel ?? ''}`;
    const known = this.#seen.get(key);
    if (known) {
      known.count++;
      known.longest = Math.max(known.longest, at.jump ?? 0);
    } else {
      const { row, seconds, jump = 0 } = at;
      this.#seen.set(key, { kind, channel, row, seconds, count: 1, longest: jump });
    }
  }

  all(): LogFlag[] {
    return [...this.#seen.values()].map(({ longest, ...flag }) => ({
      ...flag,
      message: [
        flag.channel === null ? '' : `${flag.channel}: `,
        WORDS[flag.kind](flag.count, jumpInWords(longest)),
        ` First at row ${count(flag.row)}${flag.seconds === null ? '' : `, ${hoursMinutes(flag.seconds)} h into the log`}.`,
      ].join(''),
    }));
  }
}
