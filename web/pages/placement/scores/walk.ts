import type { ScoresData, ScoresPoint } from '../../../../api/figures/scores-data.ts';

/** A point that is being read. */
export interface Read extends ScoresPoint {
  readonly kind: 'replica' | 'reference';
  /** Name of its ware group, or `Replicas`. */
  readonly set: string;
  /** Its place in the set from left to right, from 1, and how many there are. */
  readonly place: number;
  readonly of: number;
}
export type Step = 'next' | 'previous' | 'next set' | 'previous set' | 'first' | 'last';

/** Every point in sets: the replicas, then each ware group; in each set from left to right. */
export function setsOf(data: ScoresData): Read[][] {
  const sets = [
    { kind: 'replica' as const, set: 'Replicas', points: data.replicas },
    ...data.groups.map(({ name, points }) => ({ kind: 'reference' as const, set: name, points })),
  ];
  return sets
    .filter(({ points }) => points.length > 0)
    .map(({ kind, set, points }) =>
      [...points]
        .sort((one, other) => one.x - other.x)
        .map(({ id, label, x, y }, i) => ({ id, label, x, y, kind, set, place: i + 1, of: points.length })),
    );
}

/** Where a key takes one from a point; from nowhere, to the first point of all. */
export function walk(sets: readonly (readonly Read[])[], from: string | null, step: Step): Read | null {
  const at = sets.findIndex((set) => set.some(({ id }) => id === from));
  const set = sets[at];
  if (set === undefined) return sets[0]?.[0] ?? null;
  const place = set.findIndex(({ id }) => id === from);
  const around = (index: number, length: number) => (index + length) % length;
  switch (step) {
    case 'next':
      return set[around(place + 1, set.length)]!;
    case 'previous':
      return set[around(place - 1, set.length)]!;
    case 'first':
      return set[0]!;
    case 'last':
      return set.at(-1)!;
    default:
      return nearestIn(sets[around(at + (step === 'next set' ? 1 : -1), sets.length)]!, set[place]!);
  }
}

/** The point of a set nearest on the plane, so that going from set to set does not jump about. */
function nearestIn(set: readonly Read[], from: Read): Read {
  const far = (point: Read) => Math.hypot(point.x - from.x, point.y - from.y);
  return set.reduce((best, point) => (far(point) < far(best) ? point : best));
}
