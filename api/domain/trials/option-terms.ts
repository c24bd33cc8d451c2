import { RequirementError } from '../requirement.ts';
import type { OptionTerm } from './belief.ts';
import { levelsOf } from './terms.ts';
import type { TrialTable } from './trial-table.ts';
import type { Factor, Level, Option } from './types.ts';
import { perStep } from './unit-words.ts';

/**
 * The terms of the model under which the next tile is chosen: every factor asked for, with every level fired so far
 * or on offer. Throws when an option is of a factor not asked for, has no value, or holds a word where the factor is
 * a number.
 *
 * @example
 * const factors = [{ name: 'coats', kind: 'number', unit: 'coats', step: 2 }]
 * const table = { zones: [{ factors: { coats: 1 } }] }
 * optionTerms(table, factors, [{ name: 'coats', at: 'zone', values: [1, 5] }])[0].column(5) // 2.5
 * optionTerms(table, factors, [{ name: 'air', at: 'tile', values: ['smoky'] }]) // throws an option needs a factor that is analysed; found air
 */
export function optionTerms(
  table: Pick<TrialTable, 'zones'>,
  factors: readonly Factor[],
  options: readonly Option[],
): OptionTerm[] {
  for (const option of options) checkOption(option, factors);
  return factors.flatMap((factor): OptionTerm[] => {
    const offered = options.find((o) => o.name === factor.name)?.values ?? [];
    if (factor.kind === 'number')
      return [
        {
          factor,
          contrast: perStep(factor.step, factor.unit),
          level: null,
          column: (at: Level) => Number(at) / factor.step,
        },
      ];
    const fired = table.zones.map((z) => String(z.factors[factor.name]));
    const [base, ...levels] = levelsOf(factor, fired);
    const fresh = offered.map(String).filter((v) => v !== base && !levels.includes(v));
    return [...levels, ...fresh].map((level) => ({
      factor,
      contrast: `${level} instead of ${base}`,
      level,
      column: (at: Level) => (String(at) === level ? 1 : 0),
    }));
  });
}

function checkOption({ name, values }: Option, factors: readonly Factor[]): void {
  const factor = factors.find((f) => f.name === name);
  if (!factor) throw new RequirementError(`an option needs a factor that is analysed; found ${name}`);
  if (values.length === 0) throw new RequirementError(`an option needs a setting; ${name} has none`);
  const word = values.find((v) => typeof v !== 'number' || !Number.isFinite(v));
  if (factor.kind === 'number' && word !== undefined)
    throw new RequirementError(`an option of ${name} needs numbers; found ${word}`);
}
