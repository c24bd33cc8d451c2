import type { FireLog, FireMark } from './fire-note-types.ts';
import type { Air, AirStage } from './types.ts';

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

/**
 * The last air tapped, where nobody noted its end: since when, in seconds since lighting. Null where its end is noted,
 * where the time of lighting is not, and where a stage written by hand tells of that time. It is no stage, since a
 * stage ends.
 *
 * @example
 * const at = (clock) => ({ noted: `2026-03-01T${clock}Z`, at: `2026-03-01T${clock}Z` })
 * const marks = [{ mark: 'a', kind: 'lit', ...at('10:00:00') }, { mark: 'b', kind: 'air', air: 'smothered', ...at('15:10:00') }]
 * openStage({ stages: [], readings: [], marks }) // { air: 'smothered', from: 18600 }
 * openStage({ stages: [], readings: [], marks: [...marks, { mark: 'c', kind: 'out', ...at('19:00:00') }] }) // null
 */
export function openStage({ stages, marks }: FireLog): { air: Air; from: number } | null {
  const [lit, now] = [litAt(marks), airNow(marks)];
  if (lit === null || now === null) return null;
  const from = Math.max(0, secondsBetween(lit, now.since));
  const told = stages.some((one) => one.to > from && (one.from <= from || one.air === now.air));
  return told ? null : { air: now.air, from };
}

const millis = (instant: string) => Date.parse(instant);
/** Whole seconds from one instant to another. */
export const secondsBetween = (from: string, to: string) => Math.round((millis(to) - millis(from)) / 1000);

/** Noted last; of two at one instant, the one with the greater id, so that no order of arrival matters. */
function latest(marks: readonly FireMark[]): FireMark | undefined {
  const later = (a: FireMark, b: FireMark) => millis(a.noted) - millis(b.noted) || (a.mark < b.mark ? -1 : 1);
  return marks.toSorted(later).at(-1);
}

/** Changes of air in order of time, those that change nothing left out. */
function changesOf(marks: readonly FireMark[]): FireMark[] {
  const changes = marks
    .filter((one) => one.kind === 'air' || one.kind === 'out')
    .toSorted((a, b) => millis(a.at) - millis(b.at) || (a.mark < b.mark ? -1 : 1));
  return changes.filter((one, i) => (one.air ?? null) !== (changes[i - 1]?.air ?? null));
}

/** A stage of air as tapped, with the mark that began it, which stays whatever its times become. */
export interface TappedStage {
  readonly mark: string;
  readonly stage: AirStage;
}

/**
 * The stages of air that the marks alone tell of: each ends where the next begins or the fire is out.
 *
 * @example
 * const at = (clock) => ({ noted: `2026-03-01T${clock}Z`, at: `2026-03-01T${clock}Z` })
 * const marks = [{ mark: 'a', kind: 'air', air: 'reducing', ...at('10:05:00') }, { mark: 'b', kind: 'air', air: 'oxidising', ...at('10:50:00') }]
 * tappedStages(marks, '2026-03-01T10:00:00Z') // [{ mark: 'a', stage: { air: 'reducing', from: 300, to: 3000, note: null } }]
 */
export function tappedStages(marks: readonly FireMark[], lit: string | null): TappedStage[] {
  if (lit === null) return [];
  const changes = changesOf(marks);
  const since = (one: FireMark) => Math.max(0, secondsBetween(lit, one.at));
  return changes.flatMap((one, i) => {
    const next = changes[i + 1];
    if (!one.air || !next || since(next) <= since(one)) return [];
    return [{ mark: one.mark, stage: { air: one.air, from: since(one), to: since(next), note: null } }];
  });
}
