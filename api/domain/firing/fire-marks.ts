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
  const last = airsOf(marks).at(-1)?.[0];
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

/** What was noted of the air in order of time, each air with the marks that say it again. */
function airsOf(marks: readonly FireMark[]): [FireMark, ...FireMark[]][] {
  const airs: [FireMark, ...FireMark[]][] = [];
  const ordered = marks
    .filter((one) => one.kind === 'air' || one.kind === 'out')
    .toSorted((a, b) => millis(a.at) - millis(b.at) || (a.mark < b.mark ? -1 : 1));
  for (const one of ordered) {
    const last = airs.at(-1);
    if (last && last[0].air === one.air) last.push(one);
    else airs.push([one]);
  }
  return airs;
}

/** A stage of air as tapped, with its marks, which stay whatever its times become. */
export interface TappedStage {
  readonly marks: readonly string[];
  readonly takenOut: boolean;
  readonly stage: AirStage;
}

/**
 * The stages of air that the marks alone tell of: each ends where the next begins or the fire is out. One is taken out
 * where any of its marks is, so that a mark that arrives late, and moves its beginning, does not bring it back.
 *
 * @example
 * const at = (clock) => ({ noted: `2026-03-01T${clock}Z`, at: `2026-03-01T${clock}Z` })
 * const marks = [{ mark: 'a', kind: 'air', air: 'reducing', ...at('10:05:00') }, { mark: 'b', kind: 'air', air: 'oxidising', ...at('10:50:00') }]
 * tappedStages(marks, '2026-03-01T10:00:00Z') // [{ marks: ['a'], takenOut: false, stage: { air: 'reducing', from: 300, to: 3000, note: null } }]
 */
export function tappedStages(marks: readonly FireMark[], lit: string | null): TappedStage[] {
  if (lit === null) return [];
  const airs = airsOf(marks);
  const since = (one: FireMark) => Math.max(0, secondsBetween(lit, one.at));
  return airs.flatMap((said, i) => {
    const [first, next] = [said[0], airs[i + 1]?.[0]];
    if (!first.air || !next || since(next) <= since(first)) return [];
    const stage = { air: first.air, from: since(first), to: since(next), note: null };
    return [
      { marks: said.map((one) => one.mark), takenOut: said.some((one) => one.takenOut === true), stage },
    ];
  });
}
