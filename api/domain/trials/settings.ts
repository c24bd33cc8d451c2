import { RequirementError } from '../requirement.ts';
import { aliasSentences } from './aliases.ts';
import { bestFraction, fractionBy } from './fraction.ts';
import type { Level, PlanKind, PlannedFactor } from './types.ts';

/** A setting of some factors. */
export type Settings = Readonly<Record<string, Level>>;

/** The settings to make of factors that change on the same unit. */
export interface SettingList {
  readonly settings: readonly Settings[];
  readonly generators: readonly string[];
  readonly resolution: number | null;
  readonly aliases: readonly string[];
  /** Signs of two-level designs, one row a setting; null otherwise. */
  readonly signs: readonly (readonly number[])[] | null;
}

const NOTHING: SettingList = { settings: [{}], generators: [], resolution: null, aliases: [], signs: null };

/**
 * The settings a kind of plan asks for: each step of a ladder; the first levels, then one factor changed at a time;
 * every combination; or a fraction of them (the best that `room` holds where no generators are given). Throws where
 * the kind does not fit the factors.
 *
 * @example
 * const lead = { name: 'lead', unit: '%', at: 'tile', levels: [30, 40] }
 * const roast = { name: 'roast', unit: null, at: 'tile', levels: ['short', 'long'] }
 * settingsFor('one-at-a-time', [lead, roast], { room: 9 }).settings // [{ lead: 30, roast: 'short' }, { lead: 40, roast: 'short' }, { lead: 30, roast: 'long' }]
 * settingsFor('full', [lead, roast], { room: 9 }).settings.length // 4
 * settingsFor('ladder', [lead, roast], { room: 9 }) // throws a ladder needs one factor; found lead, roast
 */
export function settingsFor(
  kind: PlanKind,
  factors: readonly PlannedFactor[],
  { room, generators }: { room: number; generators?: readonly string[] },
): SettingList {
  if (factors.length === 0) return NOTHING;
  if (kind === 'fraction') return fraction(factors, room, generators);
  if (kind === 'ladder') return { ...NOTHING, settings: ladder(factors) };
  if (kind === 'one-at-a-time')
    return {
      ...NOTHING,
      settings: oneAtATime(factors),
      aliases:
        factors.length > 1
          ? [
              'Each factor is tried with the others at their first level only: what two do together is not seen.',
            ]
          : [],
    };
  return {
    ...NOTHING,
    settings: everyCombination(factors),
    signs: factors.every((f) => f.levels.length === 2) ? fractionBy(factors.length, []).runs : null,
  };
}

function ladder(factors: readonly PlannedFactor[]): Settings[] {
  if (factors.length !== 1)
    throw new RequirementError(`a ladder needs one factor; found ${factors.map((f) => f.name).join(', ')}`);
  const { name, levels } = factors[0]!;
  return levels.map((level) => ({ [name]: level }));
}

function oneAtATime(factors: readonly PlannedFactor[]): Settings[] {
  const base = Object.fromEntries(factors.map((f) => [f.name, f.levels[0]!]));
  return [base, ...factors.flatMap((f) => f.levels.slice(1).map((level) => ({ ...base, [f.name]: level })))];
}

/**
 * Every combination of levels, the first factor changing fastest.
 *
 * @example
 * everyCombination([{ name: 'a', levels: [1, 2] }, { name: 'b', levels: ['x'] }]) // [{ a: 1, b: 'x' }, { a: 2, b: 'x' }]
 */
export function everyCombination(factors: readonly Pick<PlannedFactor, 'name' | 'levels'>[]): Settings[] {
  return factors.reduce<Settings[]>(
    (settings, { name, levels }) => levels.flatMap((level) => settings.map((s) => ({ ...s, [name]: level }))),
    [{}],
  );
}

function fraction(
  factors: readonly PlannedFactor[],
  room: number,
  generators: readonly string[] | undefined,
): SettingList {
  const odd = factors.find((f) => f.levels.length !== 2);
  if (odd)
    throw new RequirementError(
      `a fraction needs two levels of each factor; ${odd.name} has ${odd.levels.length}`,
    );
  const basic = Math.min(factors.length, Math.floor(Math.log2(room)));
  const made = generators ? fractionBy(factors.length, generators) : bestFraction(factors.length, basic);
  return {
    settings: made.runs.map((run) =>
      Object.fromEntries(factors.map((f, i) => [f.name, f.levels[run[i]! > 0 ? 1 : 0]!])),
    ),
    generators: made.generators,
    resolution: made.resolution,
    aliases: aliasSentences(
      made,
      factors.map((f) => f.name),
    ),
    signs: made.runs,
  };
}
