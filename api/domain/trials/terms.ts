import type { Factor, UnitOfChange, Zone } from './types.ts';
import { perStep, unitFor } from './unit-words.ts';

/** One contrast of a factor: a number per step, or a level instead of the base. */
export interface Term {
  readonly factor: Factor;
  /** `per 10 µm`, or `long instead of short`. */
  readonly contrast: string;
  /** The level that is set against the base; null for a number. */
  readonly level: string | null;
  readonly unitOfChange: UnitOfChange;
  /** One value a zone of the table, in steps; 1 or 0 for a level. */
  readonly values: readonly number[];
}

/**
 * The contrasts of a factor over some zones: a number per step, or each level instead of the base.
 *
 * @example
 * const zones = [{ factors: { roast: 'short' } }, { factors: { roast: 'long' } }]
 * termsOf({ name: 'roast', kind: 'category', base: 'short' }, zones, 'tile')[0] // { contrast: 'long instead of short', values: [0, 1] }
 */
export function termsOf(factor: Factor, zones: readonly Pick<Zone, 'factors'>[], unit: UnitOfChange): Term[] {
  const settings = zones.map((z) => z.factors[factor.name]!);
  if (factor.kind === 'number') {
    const values = settings.map((v) => Number(v) / factor.step);
    return [{ factor, contrast: perStep(factor.step, factor.unit), level: null, unitOfChange: unit, values }];
  }
  const levels = levelsOf(factor, settings.map(String));
  return levels.slice(1).map((level) => ({
    factor,
    contrast: `${level} instead of ${levels[0]}`,
    level,
    unitOfChange: unit,
    values: settings.map((v) => (String(v) === level ? 1 : 0)),
  }));
}

/**
 * The levels of a factor: first the base, the one asked for where it occurs, else the most frequent; the others by
 * name.
 *
 * @example
 * levelsOf({ name: 'roast', kind: 'category', base: null }, ['short', 'long', 'short']) // ['short', 'long']
 */
export function levelsOf(factor: Factor, settings: readonly string[]): string[] {
  const levels = [...new Set(settings)].sort((a, b) => (a < b ? -1 : 1));
  const count = (level: string) => settings.filter((s) => s === level).length;
  const asked = factor.kind === 'category' ? factor.base : null;
  const base =
    asked !== null && levels.includes(asked) ? asked : levels.reduce((a, b) => (count(b) > count(a) ? b : a));
  return [base, ...levels.filter((level) => level !== base)];
}

/**
 * A factor's setting of a zone, with its unit.
 *
 * @example
 * settingInWords({ name: 'thickness', kind: 'number', unit: 'µm', step: 10 }, { factors: { thickness: 40 } }) // '40 µm'
 */
export function settingInWords(factor: Factor, zone: Pick<Zone, 'factors'>): string {
  const value = zone.factors[factor.name] ?? 'not noted';
  if (factor.kind !== 'number') return String(value);
  return `${value} ${unitFor(Number(value), factor.unit)}`.trimEnd();
}
