import { RequirementError } from '../requirement.ts';
import { litAt, secondsBetween } from './fire-marks.ts';
import type { ClockedReading, FireLog, FireMark, FireNote } from './fire-note-types.ts';
import { restaged } from './hand-stages.ts';

/** A note further than this from its fire, s, is a slip of some clock. */
const MOST_SECONDS = 5_000_000;

/**
 * A firing's record with one more note. A note whose id is there already changes nothing. When the fire was lit is
 * said by the note noted last; seconds since then follow it, but figures that were written over by hand stay. A stage
 * of air ends when the next begins or the fire is out; where a stage written by hand lies, that one stands, and one
 * taken out by hand stays out. Throws where air is noted before the fire was lit, or a note is far from the fire.
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
    stages: restaged(log, marks),
    readings: note.kind === 'reading' ? [...readings, taken(note, lit)] : readings,
  };
}

function markOf(note: FireNote): FireMark {
  const { id: mark, noted, at, kind } = note;
  return { mark, noted, at, kind, ...(note.kind === 'air' ? { air: note.air } : {}) };
}

const taken = ({ id, at: clock, where, reading }: FireNote & { kind: 'reading' }, lit: string | null) => ({
  ...{ id, clock, where, reading },
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
