import { RequirementError } from '../requirement.ts';
import type { ClockedReading, FireLog, FireMark, FireNote } from './fire-note-types.ts';
import { stagesInOrder } from './stages.ts';
import type { Air, AirStage } from './types.ts';

/** A note further than this from its fire, s, is a slip of some clock. */
const MOST_SECONDS = 5_000_000;

/**
 * A firing's record with one more note. A note whose id is there already changes nothing. When the fire was lit is
 * said by the note noted last; seconds since then follow it, but figures that were written over by hand stay. A stage
 * of air ends when the next begins or the fire is out; where a stage written by hand lies, that one stands. Throws
 * where air is noted before the fire was lit, or a note is far from the fire.
 *
 * @example
 * const empty = { stages: [], readings: [], marks: [] }
 * const lit = noteFire(empty, { id: 'a', kind: 'lit', noted: '2026-03-01T10:00:00Z', at: '2026-03-01T10:00:00Z' })
 * const open = noteFire(lit, { id: 'b', kind: 'air', air: 'oxidising', noted: '2026-03-01T10:05:00Z', at: '2026-03-01T10:05:00Z' })
 * const out = noteFire(open, { id: 'c', kind: 'out', noted: '2026-03-01T12:05:00Z', at: '2026-03-01T12:05:00Z' })
 * out.stages // [{ air: 'oxidising', from: 300, to: 7500 }]
 * noteFire(out, { id: 'b', kind: 'out', noted: '2026-03-01T13:00:00Z', at: '2026-03-01T13:00:00Z' }) === out // true
 * noteFire(empty, { id: 'a', kind: 'out', noted: '2026-03-01T10:00:00Z', at: '2026-03-01T10:00:00Z' }) // throws a stage of air needs the time the fire was lit
 */
export function noteFire(log: FireLog, note: FireNote): FireLog {
  if (log.marks.some((one) => one.mark === note.id)) return log;
  const before = litAt(log.marks);
  if (before === null && (note.kind === 'air' || note.kind === 'out'))
    throw new RequirementError('a stage of air needs the time the fire was lit; it is not noted yet');
  const marks = [...log.marks, markOf(note)];
  const lit = note.kind === 'lit' ? litAt(marks) : before;
  if (lit !== null && Math.abs(secondsBetween(lit, note.at)) > MOST_SECONDS)
    throw new RequirementError(
      `a note of a firing needs to be within ${(MOST_SECONDS / 86_400) | 0} days of its lighting; it was lit ${lit}, this is of ${note.at}`,
    );
  const readings = log.readings.map((one) => moved(one, before, lit));
  return {
    marks,
    stages: restaged(log, marks, { before, lit }),
    readings: note.kind === 'reading' ? [...readings, taken(note, lit)] : readings,
  };
}

/**
 * When the fire was lit, as the note noted last says; null where nobody noted it.
 *
 * @example
 * litAt([{ mark: 'a', kind: 'lit', noted: '2026-03-01T10:00:00Z', at: '2026-03-01T09:50:00Z' }]) // '2026-03-01T09:50:00Z'
 * litAt([]) // null
 */
export function litAt(marks: readonly FireMark[]): string | null {
  return latest(marks.filter((one) => one.kind === 'lit'))?.at ?? null;
}

/**
 * The air that the fire has had since the last change, null before the first and after it was out.
 *
 * @example
 * airNow([{ mark: 'a', kind: 'air', air: 'reducing', noted: '2026-03-01T10:00:00Z', at: '2026-03-01T10:00:00Z' }]) // { air: 'reducing', since: '2026-03-01T10:00:00Z' }
 */
export function airNow(marks: readonly FireMark[]): { air: Air; since: string } | null {
  const last = changesOf(marks).at(-1);
  return last?.air ? { air: last.air, since: last.at } : null;
}

const millis = (instant: string) => Date.parse(instant);
const secondsBetween = (from: string, to: string) => Math.round((millis(to) - millis(from)) / 1000);

/** Noted last; of two at one instant, the one with the greater id, so that no order of arrival matters. */
function latest(marks: readonly FireMark[]): FireMark | undefined {
  const later = (a: FireMark, b: FireMark) => millis(a.noted) - millis(b.noted) || (a.mark < b.mark ? -1 : 1);
  return marks.toSorted(later).at(-1);
}

function markOf(note: FireNote): FireMark {
  const { id: mark, noted, at, kind } = note;
  return { mark, noted, at, kind, ...(note.kind === 'air' ? { air: note.air } : {}) };
}

const taken = ({ at: clock, where, reading }: FireNote & { kind: 'reading' }, lit: string | null) => ({
  ...{ clock, where, reading },
  at: since(lit, clock),
});

/** Seconds since lighting; null before it. */
function since(lit: string | null, clock: string): number | null {
  const seconds = lit === null ? -1 : secondsBetween(lit, clock);
  return seconds >= 0 ? seconds : null;
}

function moved(one: ClockedReading, before: string | null, lit: string | null): ClockedReading {
  if (one.clock === null || one.at !== since(before, one.clock)) return one;
  return { ...one, at: since(lit, one.clock) };
}

/** Changes of air in order of time, those that change nothing left out. */
function changesOf(marks: readonly FireMark[]): FireMark[] {
  const changes = marks
    .filter((one) => one.kind === 'air' || one.kind === 'out')
    .toSorted((a, b) => millis(a.at) - millis(b.at) || (a.mark < b.mark ? -1 : 1));
  return changes.filter((one, i) => (one.air ?? null) !== (changes[i - 1]?.air ?? null));
}

function tappedStages(marks: readonly FireMark[], lit: string | null): AirStage[] {
  if (lit === null) return [];
  const changes = changesOf(marks);
  return changes.flatMap((one, i) => {
    const next = changes[i + 1];
    if (!one.air || !next) return [];
    const [from, to] = [one, next].map((each) => Math.max(0, secondsBetween(lit, each.at))) as [
      number,
      number,
    ];
    return to > from ? [{ air: one.air, from, to, note: null }] : [];
  });
}

function restaged(
  { stages, marks: old }: FireLog,
  marks: readonly FireMark[],
  { before, lit }: { before: string | null; lit: string | null },
): AirStage[] {
  const same = (a: AirStage, b: AirStage) => a.air === b.air && a.from === b.from && a.to === b.to;
  const were = tappedStages(old, before);
  const byHand = stages.filter((one) => !were.some((each) => same(one, each)));
  const apart = (one: AirStage) => byHand.every((each) => one.to <= each.from || each.to <= one.from);
  return stagesInOrder([...byHand, ...tappedStages(marks, lit).filter(apart)]);
}
